using System.Text;

namespace ProcRunner.Yaml.Tests;

/// <summary>Whatever becomes of a file, loading it gives a value or problems with their place, and never throws.</summary>
public sealed class FuzzTests
{
    private const int Rounds = 1_500;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_file_spoiled_anywhere_is_read_or_refused(int seed)
    {
        Random random = new(seed);
        byte[][] samples = [Encoding.UTF8.GetBytes(Samples.Head), Encoding.UTF8.GetBytes(Samples.Procedure)];
        int refused = 0;
        for (int i = 0; i < Rounds; i++)
        {
            byte[] spoiled = Spoil(samples[i % 2], random);
            Loaded<Procedures.HeadSpec> head = HeadSpecFile.Load("x", spoiled);
            Loaded<Procedures.Procedure> procedure = ProcedureFile.Load("x", spoiled);
            Assert.Equal(head.Value is null, head.Problems.Count > 0);
            Assert.Equal(procedure.Value is null, procedure.Problems.Count > 0);
            Assert.All(
                head.Problems.Concat(procedure.Problems),
                problem => Assert.InRange(problem.Place.Column, 0, 100_000)
            );
            refused += head.Value is null && procedure.Value is null ? 1 : 0;
        }

        Assert.InRange(refused, Rounds / 3, Rounds);
    }

    private static byte[] Spoil(byte[] sample, Random random)
    {
        const string Marks = "{}[]:,-'\"#&*!|>%@`?~ \n\tx0.";
        List<byte> bytes = [.. sample];
        for (int i = random.Next(1, 6); i > 0; i--)
        {
            int at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0:
                    bytes[at] = (byte)Marks[random.Next(Marks.Length)];
                    break;
                case 1:
                    bytes.Insert(at, (byte)Marks[random.Next(Marks.Length)]);
                    break;
                case 2:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 40), bytes.Count - at));
                    break;
                default:
                    int length = Math.Min(random.Next(1, 200), bytes.Count - at);
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                    break;
            }
        }

        return [.. bytes];
    }
}
