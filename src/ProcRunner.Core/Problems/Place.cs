namespace ProcRunner.Problems;

/// <summary>Where in a file something stands. Lines and columns count from 1; 0 means the file as a whole.</summary>
/// <param name="File">The file's name as it was given.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column in characters, from 1.</param>
public readonly record struct Place(string File, int Line, int Column)
{
    /// <summary>The usual <c>file:line:column</c>, which editors can follow.</summary>
    public override string ToString() =>
        Line == 0 ? File : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
}
