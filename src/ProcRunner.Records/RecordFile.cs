using ProcRunner.Records.Data;
using ProcRunner.Records.Papers;
using ProcRunner.Records.Print;
using ProcRunner.Records.Web;
using ProcRunner.Trail;

namespace ProcRunner.Records;

/// <summary>Writes a build record in one of its four forms, which a file's ending picks.</summary>
public static class RecordFile
{
    /// <summary>The endings, with what each is.</summary>
    public static IReadOnlyList<(string Ending, string Meaning)> Forms { get; } =
    [
        (".html", "a page for screens, phones and paper"),
        (".pdf", "for paper and mail"),
        (".csv", "a table for spreadsheets"),
        (".json", "for programs"),
    ];

    /// <summary>True when a file's name ends in one of the four.</summary>
    public static bool CanWrite(string path) =>
        Forms.Any(f => path.EndsWith(f.Ending, StringComparison.OrdinalIgnoreCase));

    /// <summary>Writes it.</summary>
    /// <param name="record">The record.</param>
    /// <param name="path">The file's name, for its ending.</param>
    /// <param name="to">Where to; left open.</param>
    /// <param name="progress">Told piece by piece.</param>
    /// <exception cref="ArgumentException">The ending is none of the four.</exception>
    /// <exception cref="OperationCanceledException">The writing is to stop.</exception>
    public static void Write(BuildRecord record, string path, Stream to, WritingProgress progress)
    {
        switch (Path.GetExtension(path).ToLowerInvariant())
        {
            case ".html":
                WebPage.Write(PaperMaker.Of(record), to, progress);
                break;
            case ".pdf":
                PdfPaper.Write(PaperMaker.Of(record), record.Shop, record.Last.At, to, progress);
                break;
            case ".csv":
                CsvRecord.Write(record, to, progress);
                break;
            case ".json":
                to.Write([.. CanonicalJson.Write(RecordJson.Of(record)), (byte)'\n']);
                progress.Report(1, 1);
                break;
            default:
                throw new ArgumentException($"\"{path}\" doesn't end in one of the four forms.", nameof(path));
        }
    }
}
