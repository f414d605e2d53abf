namespace ProcRunner.Trail;

/// <summary>Tells the fields of an entry by their keys' bytes.</summary>
internal static class TrailFields
{
    private static readonly (byte[] Key, TrailFieldSet Field)[] Table =
    [
        (Bytes(TrailKeys.At), TrailFieldSet.At),
        (Bytes(TrailKeys.Bench), TrailFieldSet.Bench),
        (Bytes(TrailKeys.Book), TrailFieldSet.Book),
        (Bytes(TrailKeys.By), TrailFieldSet.By),
        (Bytes(TrailKeys.Events), TrailFieldSet.Events),
        (Bytes(TrailKeys.Mark), TrailFieldSet.Mark),
        (Bytes(TrailKeys.Sequence), TrailFieldSet.Sequence),
        (Bytes(TrailKeys.Of), TrailFieldSet.Of),
        (Bytes(TrailKeys.Offset), TrailFieldSet.Offset),
        (Bytes(TrailKeys.Opens), TrailFieldSet.Opens),
        (Bytes(TrailKeys.Previous), TrailFieldSet.Previous),
        (Bytes(TrailKeys.Version), TrailFieldSet.Version),
    ];

    /// <summary>The field of a key, none when there is no such field.</summary>
    public static TrailFieldSet Of(ReadOnlySpan<byte> key)
    {
        foreach ((byte[] known, TrailFieldSet field) in Table)
        {
            if (key.SequenceEqual(known))
            {
                return field;
            }
        }

        return TrailFieldSet.None;
    }

    private static byte[] Bytes(string key) => System.Text.Encoding.UTF8.GetBytes(key);
}
