using ProcRunner.Store.Local;
using ProcRunner.Trail;

namespace ProcRunner.Tests.Storage;

/// <summary>Lets the Nth disk operation fail for N = 1, 2, ... until nothing is left to fail.</summary>
public sealed class FaultLoopTests
{
    private const int FarTooMany = 500;

    private static readonly (string What, Anchor Anchor)[] Steps =
    [
        ("reading", Anchor.None),
        ("sign", Anchor.SignedOff),
        ("reading", Anchor.None),
        ("hand over", Anchor.HandedOver),
        ("close", Anchor.ClosedOut),
    ];

    public static TheoryData<Failure, int> Bursts()
    {
        TheoryData<Failure, int> bursts = [];
        foreach (Failure how in Enum.GetValues<Failure>())
        {
            // A try of an entry is made of a few operations: bursts within one, and over several.
            foreach (int times in (int[])[1, 3, 5])
            {
                bursts.Add(how, times);
            }
        }

        return bursts;
    }

    [Theory]
    [MemberData(nameof(Bursts))]
    public void Failed_operations_are_made_good_or_can_be_tried_again(Failure how, int times)
    {
        for (int n = 1; ; n++)
        {
            Assert.True(n < FarTooMany);
            using var folder = new StoreInFolder();
            folder.Found().Dispose();
            var disk = new FailingDisk(n, how, times);
            string id;
            StoreOpening opening = Insist<StoreOpening, StoreOpening.Unusable>(() => folder.TryOpen(disk));
            using (LocalStore store = Assert.IsType<StoreOpening.Opened>(opening).Store)
            {
                id = Insist(() => store.OpenJob("2418", StoreInFolder.Texts, StoreInFolder.Draft("opened"))).Entry.Of;
                foreach ((string what, Anchor anchor) in Steps)
                {
                    Insist(() => store.Append(id, StoreInFolder.Draft(what, anchor)));
                }
            }

            Assert.Empty(folder.Broken());
            Assert.Equal(["opened", .. Steps.Select(step => step.What)], folder.EventsOf(id));
            Assert.Single(folder.Reader().JobIds());
            using LocalStore again = folder.Open();
            Assert.Empty(again.Findings);
            Assert.Equal(id, Assert.Single(again.Shop.Jobs).Key);
            if (!disk.HasFailed)
            {
                return;
            }
        }
    }

    [Theory]
    [MemberData(nameof(Bursts))]
    public void A_program_closed_after_a_failure_leaves_nothing_half(Failure how, int times)
    {
        for (int n = 1; ; n++)
        {
            Assert.True(n < FarTooMany);
            using var folder = new StoreInFolder();
            string id = folder.WithOneJob();
            var acknowledged = new List<string> { "opened", "reading", "sign" };
            var disk = new FailingDisk(n, how, times);
            if (folder.TryOpen(disk) is StoreOpening.Opened opened)
            {
                using LocalStore store = opened.Store;
                foreach ((string what, Anchor anchor) in Steps)
                {
                    if (store.Append(id, StoreInFolder.Draft(what, anchor)) is not AppendResult.Written)
                    {
                        break;
                    }

                    acknowledged.Add(what);
                }
            }

            using (LocalStore again = folder.Open())
            {
                Assert.All(again.Findings, finding => Assert.False(finding.IsBroken, finding.Text));
            }

            Assert.Empty(folder.Broken());
            List<string> there = folder.EventsOf(id);
            Assert.Equal(acknowledged, there.Take(acknowledged.Count));
            Assert.InRange(there.Count, acknowledged.Count, acknowledged.Count + 1);
            if (!disk.HasFailed)
            {
                Assert.Equal(Steps.Length + 3, acknowledged.Count);
                return;
            }
        }
    }

    [Theory]
    [InlineData(Failure.Before)]
    [InlineData(Failure.Half)]
    [InlineData(Failure.After)]
    public void A_disk_that_dies_loses_nothing_acknowledged_and_breaks_nothing(Failure how)
    {
        for (int n = 1; ; n++)
        {
            Assert.True(n < FarTooMany);
            using var folder = new StoreInFolder();
            folder.Found().Dispose();
            var disk = new FailingDisk(n, how, FailingDisk.ForGood);
            var acknowledged = new List<string>();
            string? id = null;
            if (folder.TryOpen(disk) is StoreOpening.Opened begun)
            {
                using LocalStore store = begun.Store;
                AppendResult result = store.OpenJob("2418", StoreInFolder.Texts, StoreInFolder.Draft("opened"));
                if (result is AppendResult.Written opened)
                {
                    id = opened.Entry.Of;
                    acknowledged.Add("opened");
                    foreach ((string what, Anchor anchor) in Steps)
                    {
                        if (store.Append(id, StoreInFolder.Draft(what, anchor)) is AppendResult.Written)
                        {
                            acknowledged.Add(what);
                        }
                    }
                }
            }

            // The power is gone; what the next start finds is what is on the disk.
            using (LocalStore again = folder.Open())
            {
                Assert.All(again.Findings, finding => Assert.False(finding.IsBroken, finding.Text));
            }

            Assert.Empty(folder.Broken());
            if (id is not null)
            {
                List<string> there = folder.EventsOf(id);
                Assert.Equal(acknowledged, there.Take(acknowledged.Count));
                Assert.InRange(there.Count, acknowledged.Count, acknowledged.Count + 1);
            }

            if (!disk.HasFailed)
            {
                Assert.Equal(Steps.Length + 1, acknowledged.Count);
                return;
            }
        }
    }

    [Theory]
    [InlineData(Failure.Before)]
    [InlineData(Failure.Half)]
    [InlineData(Failure.After)]
    public void A_founding_that_fails_can_be_repeated(Failure how)
    {
        for (int n = 1; ; n++)
        {
            Assert.True(n < FarTooMany);
            using var folder = new StoreInFolder();
            var disk = new FailingDisk(n, how, FailingDisk.ForGood);
            StoreOpening opening = folder.TryFound(disk);
            if (opening is StoreOpening.Opened opened)
            {
                opened.Store.Dispose();
                Assert.False(disk.HasFailed);
                return;
            }

            Assert.IsType<StoreOpening.Unusable>(opening);
            StoreOpening again = StoreFolder.Exists(folder.Root) ? folder.TryOpen() : folder.TryFound();
            Assert.IsType<StoreOpening.Opened>(again).Store.Dispose();
            Assert.Empty(folder.Broken());
        }
    }

    [Theory]
    [InlineData(Failure.Before)]
    [InlineData(Failure.Half)]
    [InlineData(Failure.After)]
    public void Putting_a_torn_end_aside_can_fail_and_be_repeated(Failure how)
    {
        for (int n = 1; ; n++)
        {
            Assert.True(n < FarTooMany);
            using var folder = new StoreInFolder();
            string id = folder.WithOneJob();
            File.AppendAllText(folder.Paths.Trail(id), "{\"at\":\"2026");
            File.AppendAllText(folder.Paths.Book, "{\"at\"");
            var disk = new FailingDisk(n, how, FailingDisk.ForGood);
            StoreOpening opening = folder.TryOpen(disk);
            (opening as StoreOpening.Opened)?.Store.Dispose();
            using (LocalStore again = folder.Open())
            {
                // A third when the book's entry about the two was itself torn.
                Assert.InRange(again.Shop.TornTails.Count, 2, 3);
            }

            Assert.Empty(folder.Broken());
            Assert.Equal(["opened", "reading", "sign"], folder.EventsOf(id));
            if (!disk.HasFailed)
            {
                return;
            }
        }
    }

    private static AppendResult.Written Insist(Func<AppendResult> action) =>
        StoreInFolder.Written(Insist<AppendResult, AppendResult.Failed>(action));

    // As often as an operator would, and then some.
    private static T Insist<T, TFailed>(Func<T> action)
    {
        T result = action();
        for (int attempt = 1; attempt < 20 && result is TFailed; attempt++)
        {
            result = action();
        }

        return result;
    }
}
