namespace ProcRunner.Store.Local;

/// <summary>What of a job is looked in.</summary>
public enum JobField
{
    /// <summary>The stamp on the head.</summary>
    Stamp,

    /// <summary>Whose head it is.</summary>
    Customer,

    /// <summary>The head family.</summary>
    Head,

    /// <summary>A fitted part, by number or name.</summary>
    Part,

    /// <summary>A fitted part's lot.</summary>
    Lot,

    /// <summary>A gauge that readings were taken with.</summary>
    Gauge,

    /// <summary>A cutter named in a remark.</summary>
    Cutter,

    /// <summary>Somebody who entered or signed something.</summary>
    Person,

    /// <summary>Notes, remarks, complaint, earlier work.</summary>
    Note,

    /// <summary>The proof code on a record, however it is typed.</summary>
    Proof,
}
