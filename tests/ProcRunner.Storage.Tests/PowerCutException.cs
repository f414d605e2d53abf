namespace ProcRunner.Tests.Storage;

/// <summary>The power is gone. No trouble with a file, so that nothing catches it.</summary>
public sealed class PowerCutException : Exception
{
    /// <inheritdoc/>
    public PowerCutException()
        : base("the power is gone") { }

    /// <inheritdoc/>
    public PowerCutException(string message)
        : base(message) { }

    /// <inheritdoc/>
    public PowerCutException(string message, Exception inner)
        : base(message, inner) { }
}
