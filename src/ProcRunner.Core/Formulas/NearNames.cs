namespace ProcRunner.Formulas;

/// <summary>Finds what a misspelt name was probably meant to be.</summary>
public static class NearNames
{
    private const int Most = 3;

    /// <summary>Up to three known names within a third of the name's length (at least two edits), nearest first.</summary>
    public static IReadOnlyList<string> Of(string name, IEnumerable<string> known)
    {
        int limit = Math.Max(2, name.Length / 3);
        return
        [
            .. known
                .Where(other => Math.Abs(other.Length - name.Length) <= limit)
                .Select(other => (Name: other, Edits: Edits(name, other)))
                .Where(other => other.Edits <= limit)
                .OrderBy(other => other.Edits)
                .ThenBy(other => other.Name, StringComparer.Ordinal)
                .Select(other => other.Name)
                .Distinct(StringComparer.Ordinal)
                .Take(Most),
        ];
    }

    // Levenshtein's distance, capitals not counted; one row of the table is enough.
    private static int Edits(string left, string right)
    {
        int[] row = [.. Enumerable.Range(0, right.Length + 1)];
        for (int i = 1; i <= left.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= right.Length; j++)
            {
                int above = row[j];
                bool same = char.ToUpperInvariant(left[i - 1]) == char.ToUpperInvariant(right[j - 1]);
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (same ? 0 : 1));
                diagonal = above;
            }
        }

        return row[^1];
    }
}
