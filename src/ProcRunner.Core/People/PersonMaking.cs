namespace ProcRunner.People;

/// <summary>What came of making a person's keys or changing a PIN.</summary>
public abstract record PersonMaking
{
    private PersonMaking() { }

    /// <summary>It is done.</summary>
    public sealed record Made(Person Person) : PersonMaking;

    /// <summary>The PIN can't be taken.</summary>
    public sealed record BadPin(PinFault Fault) : PersonMaking;

    /// <summary>The PIN given for an existing key (the certifying lead's, or the person's old one) is wrong.</summary>
    public sealed record WrongPin : PersonMaking;

    /// <summary>Only a lead who hasn't retired certifies people, and the first person is a lead.</summary>
    public sealed record NotALead : PersonMaking;

    /// <summary>The id or the name is empty, or holds what can't be kept (control or direction characters).</summary>
    public sealed record BadName : PersonMaking;
}
