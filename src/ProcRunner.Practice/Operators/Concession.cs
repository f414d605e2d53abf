using ProcRunner.Practice.Bindings;
using ProcRunner.Practice.Heads;
using ProcRunner.Quantities;
using ProcRunner.Runs;

namespace ProcRunner.Practice.Operators;

/// <summary>Whether the shop concedes a result, by what the setup says of it.</summary>
internal static class Concession
{
    /// <summary>True when every value of the last reading that is out is one that the shop concedes, and out by no more than that.</summary>
    public static bool IsGiven(Binding binding, RunState state, At at)
    {
        if (state.Find(at) is not { Readings: [.., { } last] })
        {
            return false;
        }

        IEnumerable<(string Name, Quantity Value, Judgement Judgement)> values =
        [
            .. last.Places.Select(p => (last.Characteristic, p.Value, last.Judgement)),
            .. last.Worked.Select(w => (w.Name, w.Value, w.Judgement)),
        ];
        return values.All(v =>
            v.Judgement.Verdict != Verdict.Out
            || (binding.Setup.Concedes.TryGetValue(v.Name, out Quantity most) && IsWithin(v.Value, v.Judgement, most))
        );
    }

    private static bool IsWithin(Quantity value, Judgement judgement, Quantity most)
    {
        double by = PracticeHead.InBase(most);
        double shown = PracticeHead.InBase(value);
        return !(judgement.Low is { } low && shown < PracticeHead.InBase(low) - by)
            && !(judgement.High is { } high && shown > PracticeHead.InBase(high) + by);
    }
}
