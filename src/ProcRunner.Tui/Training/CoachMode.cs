namespace ProcRunner.Tui.Training;

/// <summary>When the coach speaks.</summary>
internal enum CoachMode
{
    /// <summary>Never; the debrief at the end says it all.</summary>
    Off,

    /// <summary>When asked, from the menu.</summary>
    Asked,

    /// <summary>After every step too.</summary>
    EachStep,
}
