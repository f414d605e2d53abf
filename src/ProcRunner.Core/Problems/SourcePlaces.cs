namespace ProcRunner.Problems;

/// <summary>Where the parts of something read from a file stand in it, for checks that come after reading.</summary>
public sealed class SourcePlaces
{
    private readonly Dictionary<object, Place> _places = new(ReferenceEqualityComparer.Instance);

    /// <summary>Remembers where a part stands. The part counts as itself, not as its equals.</summary>
    public void Add(object part, Place place) => _places[part] = place;

    /// <summary>Where the part stands, or the other place when it was never added.</summary>
    public Place Of(object part, Place otherwise) => _places.GetValueOrDefault(part, otherwise);
}
