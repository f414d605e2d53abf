using ProcRunner.Runs;
using ProcRunner.Store.Local;
using ProcRunner.Testing;
using ProcRunner.Trail;
using ProcRunner.Tui.Demo;
using ProcRunner.Tui.Jobs;
using ProcRunner.Tui.Shell;
using ProcRunner.Tui.Tests.Lines;

namespace ProcRunner.Tui.Tests.Jobs;

/// <summary>Entries as another program might have decided them: listed, and nothing against the trail.</summary>
public sealed class RecomputeTests : IDisposable
{
    private readonly TempFolder _folder = new();
    private readonly LocalStore _store;
    private readonly JobRun _job;

    public RecomputeTests()
    {
        _store = DemoShop.Open(_folder["shop"], "tests").Store!;
        _job = DemoShop.OpenJob(_store, DemoShop.Stamp).Run!;
    }

    public void Dispose()
    {
        _store.Dispose();
        _folder.Dispose();
    }

    [Fact]
    public void An_entry_that_would_be_decided_otherwise_is_listed_with_then_and_now()
    {
        // The demo's first reading, decided by the program of today, but another value is written down.
        JobRun another = Writing(Otherwise);
        foreach (string line in DemoBench.EntryLines)
        {
            if (!another.LastEvents.OfType<RunEvent.ReadingTaken>().Any())
            {
                DemoBench.Run(another, line + "\n");
            }
        }

        RunEvent.ReadingTaken taken = another.LastEvents.OfType<RunEvent.ReadingTaken>().Single();
        Append([new RunEvent.StepDone(taken.At, "as another program would")]);
        StoreReader reader = _store.Reader;

        (IReadOnlyList<RedecidedEntry> listed, long entries) = Recompute.Of(reader, _job.State.JobId);

        Assert.Equal(reader.ReadTrail(_job.State.JobId).Entries.Length, entries);
        Assert.Equal([entries - 1, entries], listed.Select(l => l.Entry));
        Assert.Contains("77 in", listed[0].Then, StringComparison.Ordinal);
        Assert.Contains(taken.Reading.Value.ToString(), listed[0].Now, StringComparison.Ordinal);
        Assert.StartsWith("refused: ", listed[1].Now, StringComparison.Ordinal);
        Assert.True(JobCheck.Run(reader, _store.Shop, _store.Shop.Jobs[_job.State.JobId], null).All(c => c.Holds));
    }

    // As an earlier program told the same value: with all the places that came out of the formula.
    [Fact]
    public void An_amount_that_is_only_told_to_other_places_is_told_apart()
    {
        int at = 0;
        JobRun another = Writing(MorePlaces);
        while (!another.LastEvents.OfType<RunEvent.ReadingTaken>().Any())
        {
            DemoBench.Run(another, DemoBench.EntryLines[at++] + "\n");
        }

        (IReadOnlyList<RedecidedEntry> listed, _) = Recompute.Of(_store.Reader, _job.State.JobId);

        RedecidedEntry same = Assert.Single(listed);
        Assert.True(same.IsSame, same.Then + same.Now);
        Assert.Contains("0.0090000 in", same.Then, StringComparison.Ordinal);
    }

    // A program that decides as today's does and writes the events down otherwise.
    private JobRun Writing(Func<Json.Map, Json.Map> otherwise) =>
        new(
            () => _store.Shop,
            (job, draft) => _store.Append(job, draft with { Events = [.. draft.Events.Select(otherwise)] }),
            TimeProvider.System,
            _job.State,
            _job.Last,
            _job.Person,
            _job.LastEvents,
            new PinGate(() => _store.Shop, (_, _) => new AppendResult.Refused("no PIN is asked"), TimeProvider.System)
        );

    private static Json.Map MorePlaces(Json.Map written) =>
        written["reading"] is Json.Map reading && reading.TextAt("value") is { } value
            ? With(
                written,
                "reading",
                With(
                    reading,
                    "value",
                    new Json.Text(value.Replace("0.009 in", "0.0090000 in", StringComparison.Ordinal))
                )
            )
            : written;

    private static Json.Map Otherwise(Json.Map written) =>
        written["reading"] is Json.Map reading
            ? With(written, "reading", With(reading, "value", new Json.Text("77 in")))
            : written;

    private static Json.Map With(Json.Map map, string key, Json value) =>
        Json.MapOf([.. map.Items.Select(i => (i.Key, i.Key == key ? value : i.Value))]);

    private void Append(RunEvent[] events) =>
        Assert.IsType<AppendResult.Written>(
            _store.Append(
                _job.State.JobId,
                new EntryDraft("vale", [.. events.Select(e => RunEventFormat.Write(_job.State.Plan, e))])
            )
        );
}
