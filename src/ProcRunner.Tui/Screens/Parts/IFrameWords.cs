namespace ProcRunner.Tui.Screens.Parts;

/// <summary>What the frame of every screen of a shop says besides the screen's own words.</summary>
internal interface IFrameWords
{
    /// <summary>What stands in the top corner: who works, in which shop.</summary>
    string Corner { get; }

    /// <summary>True in a practice room: every screen of it is marked.</summary>
    bool IsPractice => false;

    /// <summary>What the screen left last had to say, once; empty when nothing.</summary>
    string TakeWord();

    /// <summary>The page about every key.</summary>
    Screen Help();
}
