using ProcRunner.Formulas;

namespace ProcRunner.Procedures;

/// <summary>What a step asks for; one of the eight kinds.</summary>
public abstract record StepWork
{
    private StepWork() { }

    /// <summary>The word of the kind, as in a procedure file.</summary>
    public abstract string Kind { get; }

    /// <summary>An instruction that is carried out.</summary>
    public sealed record Do : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "do";
    }

    /// <summary>A choice among named findings.</summary>
    /// <param name="Findings">The findings, in order.</param>
    public sealed record Inspect(IReadOnlyList<Finding> Findings) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "inspect";
    }

    /// <summary>A reading at one or more places.</summary>
    /// <param name="Taking">What is read and judged.</param>
    public sealed record Measure(Taking Taking) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "measure";
    }

    /// <summary>A zero point of the readout: the reading that it rests on, then the number set.</summary>
    /// <param name="From">The reading taken at touch-off; null: the surface touched counts as zero.</param>
    public sealed record Zero(Taking? From) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "zero";
    }

    /// <summary>A target worked to in passes, ended by a reading.</summary>
    /// <param name="Taking">The reading that ends it, with its window.</param>
    /// <param name="ZeroStep">Index of the step that sets its zero.</param>
    /// <param name="StopShort">How far before the aim the first approach stops.</param>
    /// <param name="AgreeWithin">How far predicted and measured may differ; null: the gauge's and the readout's uncertainty.</param>
    public sealed record Cut(Taking Taking, int ZeroStep, Formula StopShort, Formula? AgreeWithin) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "cut";
    }

    /// <summary>A part with its number and lot.</summary>
    /// <param name="Part">What is fitted.</param>
    public sealed record Fit(string Part) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "fit";
    }

    /// <summary>A choice that later steps depend on.</summary>
    /// <param name="Subject">What is decided about; formulas read <c>[decided.subject]</c>.</param>
    /// <param name="Choices">The choices, in order.</param>
    public sealed record Decide(string Subject, IReadOnlyList<string> Choices) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "decide";
    }

    /// <summary>A person's mark under the stage so far.</summary>
    /// <param name="Meaning">measured, checked, approved or released.</param>
    /// <param name="ByLead">True when only a lead may sign.</param>
    public sealed record Sign(string Meaning, bool ByLead) : StepWork
    {
        /// <inheritdoc/>
        public override string Kind => "sign";
    }
}
