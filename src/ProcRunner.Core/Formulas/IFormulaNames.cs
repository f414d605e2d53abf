namespace ProcRunner.Formulas;

/// <summary>The names that a formula may read where it stands, known when the file is loaded.</summary>
public interface IFormulaNames
{
    /// <summary>Every name, for messages that suggest one.</summary>
    IEnumerable<string> Known { get; }

    /// <summary>The type of a name as it stands between the brackets; null if there is no such name.</summary>
    FormulaType? TypeOf(string name);
}
