using ProcRunner.Problems;
using ProcRunner.Yaml.Trees;

namespace ProcRunner.Yaml;

/// <summary>Gets a file's bytes; one that is too large is never read whole.</summary>
internal static class FileBytes
{
    public static byte[]? Read(string path, ProblemLog log)
    {
        var whole = new Place(log.File, 0, 0);
        try
        {
            using var stream = new FileStream(
                path,
                FileMode.Open,
                FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete
            );
            byte[] buffer = new byte[FileLimits.Bytes + 1];
            int read = stream.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
            if (read > FileLimits.Bytes)
            {
                log.Add("PR-Y01", whole, SourceText.TooLarge(Math.Max(read, stream.CanSeek ? stream.Length : 0)));
                return null;
            }

            return buffer[..read];
        }
        catch (Exception error)
            when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string why = error is FileNotFoundException or DirectoryNotFoundException
                ? "it isn't there"
                : "the system refuses";
            log.Add("PR-Y12", whole, $"the file can't be opened: {why}; check its name and who may read it");
            return null;
        }
    }
}
