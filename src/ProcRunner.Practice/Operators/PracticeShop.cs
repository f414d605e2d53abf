using System.Collections.Immutable;
using ProcRunner.Lessons;
using ProcRunner.People;
using ProcRunner.Shop;

namespace ProcRunner.Practice.Operators;

/// <summary>A shop for rehearsals: the setup's gauges and readout, and a lead who exists nowhere else and holds no key.</summary>
public static class PracticeShop
{
    /// <summary>The lead's id.</summary>
    public const string Lead = "practice";

    /// <summary>The lead's name.</summary>
    public const string Name = "the model operator (practice)";

    /// <summary>The word that stands for a signature in a rehearsal.</summary>
    public const string Sign = "practice: worth nothing";

    /// <summary>The shop of a setup.</summary>
    public static ShopState Of(PracticeSetup setup)
    {
        Person lead = new(Lead, Name, Role.Lead, "", new WrappedKey(1, "", "", ""), Lead, "");
        return ShopState.Empty with
        {
            Name = "practice",
            RootId = Lead,
            Readout = setup.Readout,
            People = ShopState.Empty.People.SetItem(Lead, lead),
            Gauges = setup.Gauges.ToImmutableSortedDictionary(g => g.Gauge.Id, g => g.Gauge, StringComparer.Ordinal),
        };
    }
}
