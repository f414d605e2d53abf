using ProcRunner.Problems;
using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Drawing;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Screens.Parts;
using ProcRunner.Tui.Shell;

namespace ProcRunner.Tui.Screens.Shop;

/// <summary>A head comes in: its stamp, what it is worked to, whose it is.</summary>
internal sealed class NewJobForm : FormScreen
{
    private const string NoPractice = "no";
    private const string Practice = "yes: marked on every screen, worth nothing to a customer";
    private const string OpenIt = "open the job";
    private readonly ShopSession _session;
    private readonly IReadOnlyList<PlanFile> _procedures;
    private readonly IReadOnlyList<PlanFile> _heads;
    private readonly Field _stamp;
    private readonly Field _procedure;
    private readonly Field _head;
    private readonly Field _customer = Free("customer", "Whose head it is. May stay empty.");
    private readonly Field _complaint = Free(
        "complaint",
        "What the customer complains of. A number takes one of these; other words are typed. May stay empty.",
        StockAnswers.Complaints
    );
    private readonly Field _earlier = Free(
        "earlier work",
        "What is known of work done before. May stay empty.",
        StockAnswers.EarlierWork
    );
    private readonly Field _comeback;
    private readonly Field _linked;
    private readonly Field _practice = new("practice", FieldKind.Choice)
    {
        Choices = () => [NoPractice, Practice],
        Proposed = () => NoPractice,
    };
    private JobRun? _run;

    /// <summary>The form.</summary>
    /// <param name="session">The session.</param>
    /// <param name="folders">Where procedures and head specs are looked for; null: the program's and the store's.</param>
    public NewJobForm(ShopSession session, IReadOnlyList<string>? folders = null)
        : base(session)
    {
        _session = session;
        (_procedures, _heads) = PlanFile.Find(
            folders ?? [Machine.ProceduresFolder, Path.Combine(session.Folder, "procedures")]
        );
        _stamp = new("stamp")
        {
            Hint = () => "The number to be stamped on the head. It names the job for good.",
            Proposed = () => session.Store.ProposeStamp(),
            Fault = StampFault,
        };
        _procedure = new("procedure", FieldKind.Choice)
        {
            Hint = () => "The job keeps the text of this day: what the file says later changes no old job.",
            Choices = () => [.. _procedures.Select(file => file.InList())],
        };
        _head = new("head spec", FieldKind.Choice)
        {
            Hint = () =>
                "Enter the maker's limits for the head on the bench in a file of its own, never an invented one.",
            Choices = () => [.. _heads.Select(file => file.InList())],
        };
        _comeback = Stamp("comeback of", "The stamp of the earlier job, where this head comes back. May stay empty.");
        _linked = Stamp("other head", "The stamp of another head of the same engine. May stay empty.");
        Field open = new("all this right?", FieldKind.Choice)
        {
            Hint = () => "Enter opens the job. / goes a line back.",
            Choices = () => [OpenIt],
            Proposed = () => OpenIt,
        };
        Fields = [_stamp, _procedure, _head, _customer, _complaint, _earlier, _comeback, _linked, _practice, open];
    }

    /// <inheritdoc/>
    protected override string Title => "A head comes in";

    /// <inheritdoc/>
    protected override IReadOnlyList<Field> Fields { get; }

    /// <inheritdoc/>
    protected override Screen? Objection(Field field, string value)
    {
        if (field == _procedure)
        {
            PlanFile chosen = _procedures.First(file => file.InList() == value);
            return chosen.Problems.Count > 0 ? Page(chosen.Name, chosen.Problems) : null;
        }

        if (field != _head)
        {
            return null;
        }

        PlanFile head = _heads.First(file => file.InList() == value);
        IReadOnlyList<Problem> problems = head.Problems.Count > 0 ? head.Problems : Texts(head).Problems;
        return problems.Count > 0 ? Page(head.Name, problems) : null;
    }

    /// <inheritdoc/>
    protected override string? Write()
    {
        (PlanTexts? texts, IReadOnlyList<Problem> problems) = Texts(_heads[_head.Index]);
        if (texts is null)
        {
            return problems[0].ToString();
        }

        JobHeader header = new()
        {
            Stamp = _stamp.Text,
            ProcedureDigest = texts.ProcedureDigest.ToString(),
            HeadDigest = texts.HeadDigest.ToString(),
            Customer = _customer.Text,
            Complaint = _complaint.Text,
            EarlierWork = _earlier.Text,
            Practice = _practice.Text == Practice,
        };
        (OtherJobs? others, string fault) = OtherJobs.Find(_session.Store, _comeback.Text, _linked.Text);
        if (others is null)
        {
            return fault;
        }

        (_run, fault) = _session.Begin(texts, header, others);
        return _run is null ? fault : null;
    }

    /// <inheritdoc/>
    protected override Turn Done()
    {
        (Screen? screen, string fault) = _session.GoOn(_run!);
        _session.LeaveWord(fault);
        return screen is null ? Turn.Back : new Turn.Instead(screen);
    }

    private (PlanTexts? Texts, IReadOnlyList<Problem> Problems) Texts(PlanFile head)
    {
        PlanFile procedure = _procedures[_procedure.Index];
        return PlanTexts.Read(procedure.Name, procedure.Text, head.Name, head.Text);
    }

    private PageScreen Page(string name, IReadOnlyList<Problem> problems)
    {
        string count = problems.Count.ToString(System.Globalization.CultureInfo.InvariantCulture);
        return new PageScreen(
            _session,
            $"{name} isn't taken",
            [
                new(
                    $"{count} {(problems.Count == 1 ? "problem" : "problems")}. Mend the file, then choose it again.",
                    Ink.Bad
                ),
                .. problems.Select(problem => new TextLine(problem.ToString(), Indent: 2)),
            ]
        );
    }

    private string? StampFault(string stamp)
    {
        ShopDesk desk = _session.Desk;
        return desk.Shop.JobsWithStamp(stamp).Any() ? "This stamp is another head's already."
            : DemoShop.IsDemo(stamp) ? "This stamp is kept for the demo."
            : null;
    }

    private Field Stamp(string label, string hint) =>
        new(label)
        {
            Hint = () => hint,
            MayBeEmpty = true,
            Fault = stamp =>
                stamp.Length == 0 || _session.Store.Shop.JobsWithStamp(stamp).Any()
                    ? null
                    : $"No job has the stamp {stamp}{Like(stamp)}.",
        };

    private string Like(string stamp)
    {
        string[] like =
        [
            .. JobLedger
                .Find(_session.Store, new JobQuery { In = [(JobField.Stamp, stamp)] })
                .Jobs.Take(3)
                .Select(job => job.Stamp),
        ];
        return like.Length == 0 ? "" : $"; like it: {string.Join(", ", like)}";
    }

    private static Field Free(string label, string hint, IReadOnlyList<string>? stock = null) =>
        new(label)
        {
            Hint = () => hint,
            MayBeEmpty = true,
            Choices = () => stock ?? [],
        };
}
