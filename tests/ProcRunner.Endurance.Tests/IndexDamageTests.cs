using System.Text;
using ProcRunner.Testing;

namespace ProcRunner.Endurance.Tests;

/// <summary>The search index exchanged behind the program's back: repaired from the trails, and the operator goes on working.</summary>
public sealed class IndexDamageTests : IDisposable
{
    private static readonly (string Entry, string Then)[] Steps =
    [
        ("as the job says", "teardown / complaint"),
        ("none given", "teardown / head lost before"),
        (".009", "teardown / block lost"),
        (".005", "teardown / take the head apart"),
    ];

    private readonly TempFolder _folder = new();

    private string Store => _folder["store"];

    private string Index => Path.Combine(Store, "index.db");

    private string Sum => Path.Combine(Store, "index.sum");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Rubbish_one_byte_or_an_old_copy_is_repaired_while_the_operator_works_and_while_nobody_does()
    {
        using (LineProgram run = new(BuiltProgram.Path, Store))
        {
            Assert.NotNull(run.WaitFor(0, line => line.StartsWith("teardown / casting", StringComparison.Ordinal)));
            AssertListed("teardown / casting and stamp");
            (byte[] index, byte[] sum) old = (File.ReadAllBytes(Index), File.ReadAllBytes(Sum));
            Action[] damages =
            [
                () => File.WriteAllBytes(Index, Encoding.UTF8.GetBytes(new string('?', 50_000))),
                () => File.WriteAllBytes(Index, [0]),
                () =>
                {
                    File.WriteAllBytes(Index, old.index);
                    File.WriteAllBytes(Sum, old.sum);
                },
                () => File.WriteAllBytes(Index, old.index),
            ];
            for (int i = 0; i < damages.Length; i++)
            {
                damages[i]();
                int from = run.Count;
                run.Send(Steps[i].Entry);
                Assert.NotNull(run.WaitFor(from, line => line.StartsWith(Steps[i].Then, StringComparison.Ordinal)));
                AssertListed(Steps[i].Then);
            }

            // Brought up at the end, over damage as well.
            damages[0]();
            Assert.Equal(0, run.End().Status);
        }

        AssertListed(Steps[^1].Then);
        foreach (byte[] bytes in (byte[][])[Encoding.UTF8.GetBytes(new string('?', 50_000)), [0], []])
        {
            File.WriteAllBytes(Index, bytes);
            AssertListed(Steps[^1].Then);
        }

        File.WriteAllBytes(Index, [0]);
        using LineProgram again = new(BuiltProgram.Path, Store);
        Assert.NotNull(again.WaitFor(0, line => line.StartsWith(Steps[^1].Then, StringComparison.Ordinal)));
        Assert.Equal(0, again.End().Status);
    }

    private void AssertListed(string waitingFor)
    {
        (int status, string said) = Program.Run(Store, "jobs");
        Assert.Equal(0, status);
        Assert.Contains(waitingFor, said, StringComparison.Ordinal);
    }
}
