using QRCoder;

namespace ProcRunner.Records.Drawings;

/// <summary>
/// The proof code as a QR code (ISO/IEC 18004). It holds the code's letters and hyphens and nothing else: no address, so
/// that reading it needs no server and gives away nothing.
/// </summary>
internal static class QrDrawing
{
    private const double Module = 2.6;

    // Rows reach a little into each other, so that no hairline shows between them either.
    private const double Overlap = 1.06;

    /// <summary>The drawing, with the four modules of white round it that readers need.</summary>
    public static Drawing Of(string code)
    {
        using QRCodeGenerator generator = new();
        using QRCodeData data = generator.CreateQrCode(code, QRCodeGenerator.ECCLevel.M);
        int size = data.ModuleMatrix.Count;
        List<Shape> shapes = [new Shape.Box(0, 0, size * Module, size * Module, Tone.Paper)];
        for (int row = 0; row < size; row++)
        {
            // Dark modules beside each other are one bar, so that no hairline shows between them.
            for (int from = 0; from < size; from++)
            {
                int to = from;
                while (to < size && data.ModuleMatrix[row][to])
                {
                    to++;
                }

                if (to > from)
                {
                    shapes.Add(
                        new Shape.Box(from * Module, row * Module, (to - from) * Module, Module * Overlap, Tone.Ink)
                    );
                    from = to;
                }
            }
        }

        return new Drawing(
            "Proof code as a QR code",
            $"QR code that holds the proof code {code}.",
            size * Module,
            size * Module,
            shapes
        );
    }
}
