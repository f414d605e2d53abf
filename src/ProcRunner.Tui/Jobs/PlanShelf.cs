using ProcRunner.Trail;

namespace ProcRunner.Tui.Jobs;

/// <summary>Procedures with head specs that were read before: a shop's jobs pin few of them.</summary>
internal sealed class PlanShelf
{
    private const int Most = 64;
    private readonly Lock _gate = new();
    private readonly Dictionary<(Digest Procedure, Digest Head), PlanTexts> _texts = [];

    /// <summary>The texts with these digests; read when they aren't here yet.</summary>
    public (PlanTexts? Texts, string Fault) Get(
        Digest procedure,
        Digest head,
        Func<(PlanTexts? Texts, string Fault)> read
    )
    {
        lock (_gate)
        {
            if (_texts.TryGetValue((procedure, head), out PlanTexts? known))
            {
                return (known, "");
            }
        }

        (PlanTexts? texts, string fault) = read();
        if (texts is not null)
        {
            lock (_gate)
            {
                if (_texts.Count >= Most)
                {
                    _texts.Clear();
                }

                _texts[(procedure, head)] = texts;
            }
        }

        return (texts, fault);
    }
}
