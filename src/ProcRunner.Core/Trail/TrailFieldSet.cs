namespace ProcRunner.Trail;

/// <summary>The fields of an entry, as a set.</summary>
[Flags]
internal enum TrailFieldSet
{
    None = 0,
    At = 1,
    Bench = 2,
    Book = 4,
    By = 8,
    Events = 16,
    Mark = 32,
    Sequence = 64,
    Of = 128,
    Offset = 256,
    Opens = 512,
    Previous = 1024,
    Version = 2048,
    Required = At | Bench | Book | By | Events | Sequence | Of | Offset | Previous | Version,
}
