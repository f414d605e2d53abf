namespace ProcRunner.ShopMath;

/// <summary>Polynomials of low degree by least squares.</summary>
internal static class LeastSquares
{
    /// <summary>The terms, lowest first, by Householder reflections, which lose fewer digits than normal equations.</summary>
    /// <param name="x">Places, more different ones than the degree; best scaled to -1 to 1.</param>
    /// <param name="y">Values.</param>
    /// <param name="degree">0 or more.</param>
    public static double[] Polynomial(double[] x, double[] y, int degree)
    {
        int columns = degree + 1;
        double[][] rows = [.. x.Select((at, i) => Row(at, y[i], columns))];
        for (int column = 0; column < columns; column++)
        {
            Reflect(rows, column);
        }

        double[] terms = new double[columns];
        for (int i = columns - 1; i >= 0; i--)
        {
            double rest = rows[i][columns];
            for (int j = i + 1; j < columns; j++)
            {
                rest -= rows[i][j] * terms[j];
            }

            terms[i] = rest / rows[i][i];
        }

        return terms;
    }

    // Powers of x, then y.
    private static double[] Row(double x, double y, int columns)
    {
        double[] row = new double[columns + 1];
        double power = 1;
        for (int i = 0; i < columns; i++)
        {
            row[i] = power;
            power *= x;
        }

        row[columns] = y;
        return row;
    }

    private static void Reflect(double[][] rows, int column)
    {
        double norm = Math.Sqrt(rows.Skip(column).Sum(row => row[column] * row[column]));
        double alpha = rows[column][column] > 0 ? -norm : norm;
        double[] mirror = [.. rows.Skip(column).Select(row => row[column])];
        mirror[0] -= alpha;
        double length = mirror.Sum(one => one * one);
        if (length == 0)
        {
            return;
        }

        for (int j = column; j < rows[0].Length; j++)
        {
            double dot = 0;
            for (int i = 0; i < mirror.Length; i++)
            {
                dot += mirror[i] * rows[column + i][j];
            }

            for (int i = 0; i < mirror.Length; i++)
            {
                rows[column + i][j] -= 2 * dot / length * mirror[i];
            }
        }
    }
}
