using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace ProcRunner.Trail;

/// <summary>A SHA-256 digest (FIPS 180-4), written as 64 hexadecimal digits in small letters.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Digest
{
    /// <summary>Digits in the written form.</summary>
    public const int HexLength = 64;

    private readonly ulong _a;
    private readonly ulong _b;
    private readonly ulong _c;
    private readonly ulong _d;

    private Digest(ReadOnlySpan<byte> bytes)
    {
        _a = BinaryPrimitives.ReadUInt64BigEndian(bytes);
        _b = BinaryPrimitives.ReadUInt64BigEndian(bytes[8..]);
        _c = BinaryPrimitives.ReadUInt64BigEndian(bytes[16..]);
        _d = BinaryPrimitives.ReadUInt64BigEndian(bytes[24..]);
    }

    /// <summary>64 zeros: what stands before the first entry of a trail.</summary>
    public static Digest Zero => default;

    /// <summary>The digest of these bytes.</summary>
    public static Digest Of(ReadOnlySpan<byte> bytes)
    {
        Span<byte> hash = stackalloc byte[32];
        SHA256.HashData(bytes, hash);
        return new(hash);
    }

    /// <summary>Takes 32 bytes as a digest.</summary>
    /// <exception cref="ArgumentException">There aren't 32 bytes.</exception>
    public static Digest FromBytes(ReadOnlySpan<byte> bytes) =>
        bytes.Length == 32 ? new(bytes) : throw new ArgumentException("A digest has 32 bytes.", nameof(bytes));

    /// <summary>Reads the written form; null when it isn't 64 digits in small letters.</summary>
    public static Digest? Parse(ReadOnlySpan<byte> hex)
    {
        Span<byte> bytes = stackalloc byte[32];
        return
            hex.Length == HexLength
            && !hex.ContainsAnyInRange((byte)'A', (byte)'F')
            && Convert.FromHexString(hex, bytes, out _, out _) == System.Buffers.OperationStatus.Done
            ? new Digest(bytes)
            : null;
    }

    /// <summary>Reads the written form; null when it isn't 64 digits in small letters.</summary>
    public static Digest? Parse(ReadOnlySpan<char> hex)
    {
        Span<byte> bytes = stackalloc byte[32];
        return
            hex.Length == HexLength
            && !hex.ContainsAnyInRange('A', 'F')
            && Convert.FromHexString(hex, bytes, out _, out _) == System.Buffers.OperationStatus.Done
            ? new Digest(bytes)
            : null;
    }

    /// <summary>The 32 bytes.</summary>
    public void CopyTo(Span<byte> bytes)
    {
        BinaryPrimitives.WriteUInt64BigEndian(bytes, _a);
        BinaryPrimitives.WriteUInt64BigEndian(bytes[8..], _b);
        BinaryPrimitives.WriteUInt64BigEndian(bytes[16..], _c);
        BinaryPrimitives.WriteUInt64BigEndian(bytes[24..], _d);
    }

    /// <summary>The written form as bytes.</summary>
    public void WriteHex(Span<byte> hex)
    {
        Span<byte> bytes = stackalloc byte[32];
        CopyTo(bytes);
        Convert.TryToHexStringLower(bytes, hex, out _);
    }

    /// <summary>The written form.</summary>
    public override string ToString()
    {
        Span<byte> bytes = stackalloc byte[32];
        CopyTo(bytes);
        return Convert.ToHexStringLower(bytes);
    }
}
