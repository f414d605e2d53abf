using ProcRunner.Quantities;
using ProcRunner.Records.Story;
using ProcRunner.Runs;

namespace ProcRunner.Records;

/// <summary>Follows every cut from its zero to its end.</summary>
internal sealed class CutBook(Telling tell)
{
    private readonly List<Course> _courses = [];

    /// <summary>The cuts, in the order of their zeros.</summary>
    public IReadOnlyList<CutTold> All =>
        [
            .. _courses.Select(c => new CutTold(
                tell.Plan.Steps[c.Cut.Step].FullName,
                tell.Plan.PositionName(c.Cut.Position),
                c.Zero,
                c.Passes,
                c.Measured,
                c.Ended,
                c.By,
                c.Until
            )),
        ];

    /// <summary>Takes an entry.</summary>
    public void Take(RecordEntry entry, Stamped by)
    {
        foreach (RunEvent happened in entry.Events)
        {
            switch (happened)
            {
                case RunEvent.ZeroSet e when tell.Plan.CutOfZero(e.At.Step) is { } cut:
                    _courses.Add(new Course(new At(cut, e.At.Position), e.At, e.Zero, by));
                    break;
                case RunEvent.PassCut e when Running(e.At) is { } course:
                    course.Passes.Add(e.Progress.Readout);
                    course.Until = by;
                    break;
                case RunEvent.ReadingTaken e when Running(e.At) is { } course:
                    course.Measured.Add(e.Reading.Value);
                    course.Until = by;
                    course.Ended = e.Reading.Judgement.Verdict switch
                    {
                        Verdict.Short => "",
                        Verdict.Out => "out of spec",
                        _ => "in limits",
                    };
                    break;
                case RunEvent.CutEnded e when Running(e.At) is { } course:
                    (course.Ended, course.Until) = ("ended within its window", by);
                    break;
                case RunEvent.WentStale e:
                    Void(e, by);
                    break;
                default:
                    break;
            }
        }
    }

    private Course? Running(At cut) => _courses.LastOrDefault(c => c.Cut == cut && !c.IsVoid);

    private void Void(RunEvent.WentStale stale, Stamped by)
    {
        foreach (
            Course course in _courses.Where(c =>
                c.Ended.Length == 0 && stale.Items.Any(i => i.Step == c.ZeroAt.Step && i.Position == c.ZeroAt.Position)
            )
        )
        {
            (course.Ended, course.IsVoid, course.Until) = ($"zero void: {stale.Cause}", true, by);
        }
    }

    private sealed class Course(At cut, At zeroAt, ZeroPoint zero, Stamped by)
    {
        public At Cut { get; } = cut;

        public At ZeroAt { get; } = zeroAt;

        public ZeroPoint Zero { get; } = zero;

        public Stamped By { get; } = by;

        public Stamped Until { get; set; } = by;

        public List<Quantity> Passes { get; } = [];

        public List<Quantity> Measured { get; } = [];

        public string Ended { get; set; } = "";

        public bool IsVoid { get; set; }
    }
}
