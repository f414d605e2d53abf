namespace ProcRunner.Runs.Prompts;

/// <summary>What kind of entry a step waits for now.</summary>
public enum Awaited
{
    /// <summary>A reading, at one or more places.</summary>
    Reading,

    /// <summary>The number that the readout was set to.</summary>
    NumberSet,

    /// <summary>What the readout shows after a pass.</summary>
    Readout,

    /// <summary>One of the findings.</summary>
    Finding,

    /// <summary>One of the choices.</summary>
    Choice,

    /// <summary>A part's number and lot.</summary>
    Part,

    /// <summary>That it is done.</summary>
    Done,

    /// <summary>A sign-off.</summary>
    Signature,

    /// <summary>One of the ways on: the result is out of spec.</summary>
    WayOn,
}
