namespace ProcRunner.ShopMath;

/// <summary>Four linear equations, by elimination with the largest pivot of each column.</summary>
internal static class FourEquations
{
    private const int Size = 4;

    /// <summary>Solves in place; the matrix is row by row and is used up. Without a solution the result is not finite.</summary>
    public static void Solve(Span<double> matrix, Span<double> right)
    {
        for (int column = 0; column < Size; column++)
        {
            Swap(matrix, right, column, Largest(matrix, column));
            for (int row = column + 1; row < Size; row++)
            {
                double factor = matrix[(Size * row) + column] / matrix[(Size * column) + column];
                for (int at = column; at < Size; at++)
                {
                    matrix[(Size * row) + at] -= factor * matrix[(Size * column) + at];
                }

                right[row] -= factor * right[column];
            }
        }

        for (int row = Size - 1; row >= 0; row--)
        {
            for (int at = row + 1; at < Size; at++)
            {
                right[row] -= matrix[(Size * row) + at] * right[at];
            }

            right[row] /= matrix[(Size * row) + row];
        }
    }

    private static int Largest(ReadOnlySpan<double> matrix, int column)
    {
        int largest = column;
        for (int row = column + 1; row < Size; row++)
        {
            bool isLarger = Math.Abs(matrix[(Size * row) + column]) > Math.Abs(matrix[(Size * largest) + column]);
            largest = isLarger ? row : largest;
        }

        return largest;
    }

    private static void Swap(Span<double> matrix, Span<double> right, int one, int other)
    {
        (right[one], right[other]) = (right[other], right[one]);
        for (int at = 0; at < Size; at++)
        {
            (matrix[(Size * one) + at], matrix[(Size * other) + at]) = (
                matrix[(Size * other) + at],
                matrix[(Size * one) + at]
            );
        }
    }
}
