namespace ProcRunner.Yaml;

/// <summary>Ends the reading of a file with so many problems that more would help nobody; never leaves this assembly.</summary>
#pragma warning disable RCS1194 // Thrown in one place, with nothing to say.
internal sealed class TooManyProblemsException : Exception;
#pragma warning restore RCS1194
