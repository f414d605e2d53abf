namespace ProcRunner.Tui.Screens;

/// <summary>Who is at the machine, as a desk asks for it.</summary>
internal interface IAttendance
{
    /// <summary>After how long without a key the desk asks who works; null: never.</summary>
    TimeSpan? IdleAfter { get; }

    /// <summary>The screen that asks who works; null while there is nobody to choose from.</summary>
    /// <param name="idle">True after a time without a key: there is no way round an answer.</param>
    Screen? AskWho(bool idle);
}
