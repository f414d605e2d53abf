namespace ProcRunner.Store.Local;

/// <summary>
/// Rows of texts in one text: a tab between texts, a line feed between rows. One text is read many times faster than a document
/// with a name for every part of it.
/// </summary>
internal static class IndexText
{
    private const char Between = '\t';
    private const char End = '\n';

    /// <summary>A row; a tab or line feed inside a text becomes a space.</summary>
    public static string Row(params ReadOnlySpan<string> texts)
    {
        string[] safe = new string[texts.Length];
        for (int i = 0; i < texts.Length; i++)
        {
            safe[i] =
                texts[i].AsSpan().IndexOfAny(Between, End) < 0
                    ? texts[i]
                    : texts[i].Replace(Between, ' ').Replace(End, ' ');
        }

        return string.Join(Between, safe);
    }

    /// <summary>Rows in one text.</summary>
    public static string Rows(IEnumerable<string> rows) => string.Join(End, rows);

    /// <summary>The rows of a text.</summary>
    public static string[] RowsOf(string text) => text.Length == 0 ? [] : text.Split(End);

    /// <summary>The texts of a row.</summary>
    public static string[] TextsOf(string row) => row.Length == 0 ? [] : row.Split(Between);
}
