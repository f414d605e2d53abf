namespace ProcRunner.Tui.Screens;

/// <summary>
/// Answers that stand ready wherever text is asked, so that a number pad is enough. What is chosen is kept in the trail
/// word for word.
/// </summary>
internal static class StockAnswers
{
    /// <summary>Why a way on is taken.</summary>
    public static IReadOnlyList<string> WaysOn { get; } =
    ["as measured", "worn", "damaged", "loose fit", "cut too deep"];

    /// <summary>Why a step is left out.</summary>
    public static IReadOnlyList<string> LeaveOut { get; } =
    ["not needed here", "goes in by the press alone", "not on this head"];

    /// <summary>Why an entry is corrected.</summary>
    public static IReadOnlyList<string> Corrections { get; } = ["typing error", "misread gauge"];

    /// <summary>Why a step that was left out is to be done after all.</summary>
    public static IReadOnlyList<string> TakeBack { get; } = ["left out by mistake", "needed after all"];

    /// <summary>Why a job is put aside.</summary>
    public static IReadOnlyList<string> Hold { get; } = ["waiting for parts", "waiting for the customer", "end of day"];

    /// <summary>What a customer complains of.</summary>
    public static IReadOnlyList<string> Complaints { get; } =
    ["low compression", "loses water", "uses oil", "noise or a broken part", "ran too hot", "overhaul"];

    /// <summary>What is known of work done before.</summary>
    public static IReadOnlyList<string> EarlierWork { get; } =
    ["nothing is known", "never opened", "skimmed before", "seats replaced before", "guides replaced before"];

    /// <summary>Notes.</summary>
    public static IReadOnlyList<string> Notes { get; } = ["see photo", "customer told", "look again before assembly"];

    /// <summary>Where a limit comes from that was chosen in the run.</summary>
    public static IReadOnlyList<string> Limits { get; } =
    ["from the maker's book", "the shop's own rule", "agreed with the customer"];

    /// <summary>Why a head is released apart from the other one of its engine.</summary>
    public static IReadOnlyList<string> Apart { get; } = ["the other one comes later", "the customer wants it so"];
}
