namespace ProcRunner.Runs;

/// <summary>What is known of one step at one position.</summary>
public sealed class StepRecord
{
    /// <summary>Where it stands.</summary>
    public StepStanding Standing { get; internal set; }

    /// <summary>True when what it rests on has moved since it was done.</summary>
    public bool Stale { get; internal set; }

    /// <summary>Why it is stale or was reopened; empty otherwise.</summary>
    public string Cause { get; internal set; } = "";

    /// <summary>Sequence of the entry with its last result; 0 before any.</summary>
    public long Sequence { get; internal set; }

    /// <summary>The choice, finding, part or remark it ended with; empty otherwise.</summary>
    public string Said { get; internal set; } = "";

    /// <summary>Results out of spec since it was last begun anew.</summary>
    public int Fails { get; internal set; }

    /// <summary>True when its result stands by a concession.</summary>
    public bool Conceded { get; internal set; }

    /// <summary>An entry that was questioned and not yet answered, or null.</summary>
    public RunEvent.EntryQuestioned? Question { get; internal set; }

    /// <summary>The last reading that was questioned since one was taken, or null; a second one is held against it.</summary>
    public RunEvent.EntryQuestioned? Doubted { get; internal set; }

    /// <summary>A cut's progress, or of a zero step the zero; null before.</summary>
    public CutProgress? Cut { get; internal set; }

    /// <summary>A zero step's reading since it was last begun, or null.</summary>
    public TakenReading? AtZero { get; internal set; }

    /// <summary>A cut's progress before its last pass, for correcting that pass.</summary>
    public CutProgress? BeforeLastPass { get; internal set; }

    /// <summary>A cut's progress before its last reading, for correcting that reading; null after a pass.</summary>
    public CutProgress? BeforeReading { get; internal set; }

    /// <summary>True once a cut has been brought to its approach since its zero: from there it goes to the aim.</summary>
    public bool Approached { get; internal set; }

    /// <summary>The same before the last pass, for correcting that pass.</summary>
    public bool ApproachedBeforeLastPass { get; private set; }

    /// <summary>Every reading ever taken here, the refused ones too.</summary>
    public List<TakenReading> Readings { get; } = [];

    /// <summary>An entry was questioned.</summary>
    internal void IsAsked(RunEvent.EntryQuestioned question)
    {
        Question = question;
        Doubted = question.IsOfReading ? question : Doubted;
    }

    /// <summary>A pass was cut.</summary>
    internal void Cuts(RunEvent.PassCut pass, long sequence)
    {
        (BeforeLastPass, BeforeReading) = (Cut, null);
        (Cut, Question) = (pass.Progress, null);
        ApproachedBeforeLastPass = Approached;
        Approached |= pass.Target.StopsShort && pass.Progress.Measures;
        (Standing, Stale, Sequence) = (StepStanding.InHand, false, sequence);
    }

    /// <summary>A cut's zero was set.</summary>
    internal void StartsFrom(CutProgress zero)
    {
        (Cut, BeforeLastPass, BeforeReading, Approached, Question) = (zero, null, null, false, null);
        Standing = Standing == StepStanding.Out ? StepStanding.Out : StepStanding.Waiting;
    }

    /// <summary>The last entry is to be replaced: what it did here is taken back.</summary>
    internal void TakesBack(bool isCut)
    {
        Fails -= Standing == StepStanding.Out && Fails > 0 ? 1 : 0;
        if (isCut && Cut is { } cut)
        {
            bool wasPass = cut.Travel != cut.TravelAtReading;
            Cut = (wasPass ? BeforeLastPass : BeforeReading) ?? cut;
            Approached = wasPass ? ApproachedBeforeLastPass : Approached;
        }
    }

    /// <summary>It is measured or inspected again: a cut keeps its zero, anything else begins anew.</summary>
    internal void IsTakenAgain(bool isCut)
    {
        if (isCut && Cut is { } cut)
        {
            (Cut, Standing) = (cut with { Measures = true }, StepStanding.InHand);
            return;
        }

        (AtZero, Standing) = (null, StepStanding.Waiting);
    }

    /// <summary>The step is to be done over.</summary>
    internal void BeginsAnew(string cause)
    {
        (Standing, Stale, Cause, Conceded) = (StepStanding.Waiting, false, cause, false);
        (Cut, BeforeLastPass, BeforeReading, AtZero, Question) = (null, null, null, null, null);
        (Approached, Fails, Doubted) = (false, 0, null);
    }
}
