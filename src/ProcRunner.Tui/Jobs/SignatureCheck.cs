using System.Collections.Immutable;
using ProcRunner.People;
using ProcRunner.Procedures;
using ProcRunner.Records;
using ProcRunner.Runs;
using ProcRunner.Shop;
using ProcRunner.Store.Local;
using ProcRunner.Text;
using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>
/// Every mark of a job checked by replaying it: the signature against the person's key over what the run had come to just
/// before, and whether the person might sign then, by the shop book as the entry knew it.
/// </summary>
internal sealed class SignatureCheck
{
    private readonly ImmutableArray<(TrailEntry Entry, Digest Digest)> _book;
    private readonly Dictionary<long, long> _enteredAt = [];
    private readonly List<StoreFinding> _faults = [];
    private ShopState _shop = ShopState.Empty;
    private int _bookRead;

    private SignatureCheck(ImmutableArray<(TrailEntry Entry, Digest Digest)> book, string jobId)
    {
        _book = book;
        foreach ((TrailEntry entry, _) in book)
        {
            foreach (ShopEvent? happened in entry.Events.Select(ShopEventFormat.Read))
            {
                long? entered = happened switch
                {
                    ShopEvent.JobAnchored e when e.Job == jobId => e.Sequence,
                    ShopEvent.JobClosedOut e when e.Job == jobId => e.Sequence,
                    _ => null,
                };
                if (entered is { } sequence)
                {
                    _enteredAt.TryAdd(sequence, entry.Sequence);
                }
            }
        }
    }

    /// <summary>How many signatures there are.</summary>
    public int Count { get; private set; }

    /// <summary>The marks that don't hold.</summary>
    public IReadOnlyList<StoreFinding> Faults => _faults;

    /// <summary>True for a job on a practice head.</summary>
    public bool IsPractice { get; private set; }

    /// <summary>Checks a job.</summary>
    public static SignatureCheck Of(ITrailReader reader, string jobId)
    {
        SignatureCheck check = new(reader.ReadTrail(JobId.Shop).Entries, jobId);
        IEnumerable<TrailEntry> entries = reader.ReadTrail(jobId).Entries.Select(e => e.Entry);
        (RunState? state, string fault) = JobReading.Fold(reader, jobId, entries, check.Look);
        check.IsPractice = state?.Job is { Practice: true };
        if (state is null)
        {
            check._faults.Add(
                new(jobId, true, null, $"The job can't be replayed, so no signature can be checked. {fault}")
            );
        }

        return check;
    }

    private void Look(RunState before, TrailEntry entry, IReadOnlyList<RunEvent> events)
    {
        // A mark counts by the people there were when the shop book took the entry up, whatever the entry itself says:
        // an old key, or somebody who has left, signs nothing new by naming an older state of the book.
        bool signs = events.Any(happened => JobMark.Of(entry.Sequence, happened) is not null);
        long upTo = signs ? Math.Max(entry.Book.Sequence, TakenUpAfter(entry.Sequence)) : entry.Book.Sequence;
        while (_bookRead < _book.Length && _book[_bookRead].Entry.Sequence <= upTo)
        {
            _shop = _shop.After(_book[_bookRead].Entry, _book[_bookRead].Digest);
            _bookRead++;
        }

        foreach (RunEvent happened in events)
        {
            if (JobMark.Of(entry.Sequence, happened) is { } mark)
            {
                (string covers, string said) = Covers(before, entry, happened);
                if (covers != said)
                {
                    Fault(
                        before,
                        entry,
                        $"the {mark.Meaning} mark at {before.Plan.NameOf(mark.At)} says that it covers something else than stood in the trail"
                    );
                }

                bool trainee = Who(mark.Mark)?.Role == Role.Trainee;
                Check(before, entry, mark, mark.Mark, byLead: NeedsLead(before, mark));
                if (mark.Beside is { } lead)
                {
                    Check(before, entry, mark, lead, byLead: true);
                }
                else if (trainee)
                {
                    Fault(before, entry, $"{mark.Mark.Name} was a trainee and no lead signed beside");
                }
            }
        }
    }

    // The book's last entry before the one that took this entry up; of all entries while none has.
    private long TakenUpAfter(long sequence) => _enteredAt.TryGetValue(sequence, out long by) ? by - 1 : long.MaxValue;

    private void Check(RunState before, TrailEntry entry, JobMark mark, Mark signed, bool byLead)
    {
        Count++;
        string what = $"the signature of {signed.Name} ({mark.Meaning}) at {before.Plan.NameOf(mark.At)}";
        if (Who(signed) is not { } person || person.Name != signed.Name)
        {
            Fault(before, entry, $"{what} is nobody's whom the shop book knew then");
        }
        else if (person.RetiredAt is not null)
        {
            Fault(before, entry, $"{what} was made after they had left");
        }
        else if (byLead && person.Role != Role.Lead)
        {
            Fault(before, entry, $"{what} needs a lead, and they were none");
        }
        else if (!PersonKeys.Verify(person, Signed(before, entry, mark, signed), Bytes(signed.Signature)))
        {
            Fault(
                before,
                entry,
                $"{what} isn't made with their key over what stands in the trail: it was forged, or what it covers was changed"
            );
        }
    }

    private Person? Who(Mark mark) => _shop.People.GetValueOrDefault(mark.Person);

    private void Fault(RunState before, TrailEntry entry, string what) =>
        _faults.Add(
            new(
                before.JobId,
                true,
                entry.Sequence,
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"Entry {entry.Sequence}: {SafeText.Show(what)}."
                )
            )
        );

    private static bool NeedsLead(RunState before, JobMark mark) =>
        mark.Meaning is "conceded" or "scrapped"
        || before.Plan.Steps[mark.At.Step].Work is not StepWork.Sign { ByLead: false };

    private static (string Covers, string Said) Covers(RunState before, TrailEntry entry, RunEvent happened) =>
        happened switch
        {
            RunEvent.SignedOff e => (SignedBytes.CoversOf(before, e.At).ToString(), e.Covers),
            RunEvent.JobReleased e => (entry.Previous.ToString(), e.Covers),
            RunEvent.Conceded { Covers.Length: > 0 } e => (CoversOfWay(before, e.At, e.Reason), e.Covers),
            RunEvent.HeadScrapped { Covers.Length: > 0 } e => (CoversOfWay(before, e.At, e.Reason), e.Covers),
            _ => ("", ""),
        };

    private static string CoversOfWay(RunState before, At at, string reason) =>
        SignedBytes.CoversOfWay(before, at, reason).ToString();

    private static byte[] Signed(RunState before, TrailEntry entry, JobMark mark, Mark signed) =>
        mark.Meaning switch
        {
            "conceded" => SignedBytes.OfWay(before, mark.At, WayKind.Concession, mark.Reason, signed),
            "scrapped" => SignedBytes.OfWay(before, mark.At, WayKind.Scrap, mark.Reason, signed),
            SignMeanings.Released => SignedBytes.OfRelease(before, mark.At, signed, entry.Previous.ToString()),
            _ => SignedBytes.OfStage(before, mark.At, signed),
        };

    private static byte[] Bytes(string base64)
    {
        byte[] buffer = new byte[base64.Length];
        return Convert.TryFromBase64String(base64, buffer, out int written) ? buffer[..written] : [];
    }
}
