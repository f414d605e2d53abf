using ProcRunner.Records;
using ProcRunner.Shop;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>Writes a job's build record to a file.</summary>
internal sealed class RecordForm : FormScreen
{
    private readonly ShopSession _session;
    private readonly JobRun _run;
    private readonly string _folder;
    private readonly Field _form;
    private readonly Field _file;
    private RecordWritingScreen? _writing;

    /// <summary>The form.</summary>
    /// <param name="session">The session.</param>
    /// <param name="run">The job.</param>
    /// <param name="folder">Where a name without a folder is written.</param>
    public RecordForm(ShopSession session, JobRun run, string folder)
        : base(session)
    {
        (_session, _run, _folder) = (session, run, folder);
        _form = new Field("Form", FieldKind.Choice)
        {
            Hint = () => "Choose one by its number.",
            Choices = () => [.. RecordFile.Forms.Select(f => $"{f.Ending[1..]}: {f.Meaning}")],
        };
        _file = new Field("File")
        {
            Hint = () => $"It is written into {folder}. What stood there under that name is replaced.",
            Proposed = () => Proposed(_form.Index),
            Fault = path => RecordFile.CanWrite(path) ? null : $"Its ending must be one of {RecordExport.Endings}.",
        };
        Fields = [_form, _file];
    }

    /// <inheritdoc/>
    public override bool IsPractice => _run.State.Job is { Practice: true };

    /// <inheritdoc/>
    protected override string Title => $"{_run.State.Job?.Stamp}: build record";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override string? Write()
    {
        if (!_session.Store.Shop.Jobs.TryGetValue(_run.State.JobId, out ShopJob? job))
        {
            return "The shop book doesn't know this job.";
        }

        string path = Path.GetFullPath(_file.Text, _folder);
        _writing = new RecordWritingScreen(_session, job, path, IsPractice);
        return null;
    }

    /// <inheritdoc/>
    protected override Turn Done() => _writing is { } writing ? new Turn.Instead(writing) : Turn.Back;

    // A stamp may hold what no file's name can.
    private string Proposed(int form)
    {
        char[] stamp =
        [
            .. (_run.State.Job?.Stamp ?? "").Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_'),
        ];
        string ending = RecordFile.Forms[Math.Max(0, form)].Ending;
        return $"build-record-{new string(stamp)}{ending}";
    }
}
