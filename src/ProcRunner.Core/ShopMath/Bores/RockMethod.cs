namespace ProcRunner.ShopMath;

/// <summary>How a valve was rocked under a dial. A limit is good only for the method it was made for.</summary>
public enum RockMethod
{
    /// <summary>The stem leans in the guide, the dial stands out from the guide's end: rock = clearance (1 + 2 overhang / guide length).</summary>
    Tilt,

    /// <summary>A maker's rule that takes half of the full rock for the clearance; right by geometry where the overhang is half the guide.</summary>
    Half,

    /// <summary>The stem is pushed bodily across without leaning, or the dial stands at the guide's end: the reading is the clearance.</summary>
    Straight,
}
