namespace Laydown.Optics.Layers;

/// <summary>A small square matrix, row by row: how light of every direction turns into light of every other.</summary>
internal sealed class StreamMatrix
{
    private readonly double[] cells;

    internal StreamMatrix(int size) => (Size, cells) = (size, new double[size * size]);

    internal int Size { get; }

    internal double this[int row, int column]
    {
        get => cells[(row * Size) + column];
        set => cells[(row * Size) + column] = value;
    }

    internal static StreamMatrix Diagonal(ReadOnlySpan<double> values)
    {
        StreamMatrix diagonal = new(values.Length);
        for (int i = 0; i < values.Length; i++)
            diagonal[i, i] = values[i];
        return diagonal;
    }

    internal static StreamMatrix One(int size)
    {
        StreamMatrix one = new(size);
        for (int i = 0; i < size; i++)
            one[i, i] = 1;
        return one;
    }

    public static StreamMatrix operator *(StreamMatrix a, StreamMatrix b)
    {
        StreamMatrix product = new(a.Size);
        for (int row = 0; row < a.Size; row++)
        {
            Span<double> target = product.Row(row);
            for (int i = 0; i < a.Size; i++)
            {
                double factor = a[row, i];
                ReadOnlySpan<double> source = b.Row(i);
                for (int column = 0; factor != 0 && column < target.Length; column++)
                    target[column] += factor * source[column];
            }
        }

        return product;
    }

    public static double[] operator *(StreamMatrix a, ReadOnlySpan<double> vector)
    {
        double[] product = new double[a.Size];
        for (int row = 0; row < a.Size; row++)
        {
            for (int column = 0; column < a.Size; column++)
                product[row] += a[row, column] * vector[column];
        }

        return product;
    }

    public static StreamMatrix operator +(StreamMatrix a, StreamMatrix b) => a.With(b, 1);

    public static StreamMatrix operator -(StreamMatrix a, StreamMatrix b) => a.With(b, -1);

    internal StreamMatrix Times(double factor)
    {
        StreamMatrix scaled = new(Size);
        for (int i = 0; i < cells.Length; i++)
            scaled.cells[i] = cells[i] * factor;
        return scaled;
    }

    /// <summary>The inverse, by elimination with the largest pivot of each column.</summary>
    internal StreamMatrix Inverse()
    {
        StreamMatrix work = Times(1), inverse = One(Size);
        for (int column = 0; column < Size; column++)
        {
            int pivot = column;
            for (int row = column + 1; row < Size; row++)
                pivot = Math.Abs(work[row, column]) > Math.Abs(work[pivot, column]) ? row : pivot;
            if (work[pivot, column] == 0)
                throw new InvalidOperationException("Light goes to and fro without loss and never leaves.");
            work.Swap(column, pivot);
            inverse.Swap(column, pivot);
            double scale = 1 / work[column, column];
            work.Add(column, column, scale - 1);
            inverse.Add(column, column, scale - 1);
            for (int row = 0; row < Size; row++)
            {
                double factor = row == column ? 0 : -work[row, column];
                work.Add(row, column, factor);
                inverse.Add(row, column, factor);
            }
        }

        return inverse;
    }

    private Span<double> Row(int row) => cells.AsSpan(row * Size, Size);

    private void Swap(int one, int other)
    {
        for (int i = 0; one != other && i < Size; i++)
            (this[one, i], this[other, i]) = (this[other, i], this[one, i]);
    }

    private void Add(int row, int other, double factor)
    {
        Span<double> target = Row(row);
        ReadOnlySpan<double> source = Row(other);
        for (int i = 0; factor != 0 && i < Size; i++)
            target[i] += factor * source[i];
    }

    private StreamMatrix With(StreamMatrix other, double factor)
    {
        StreamMatrix sum = new(Size);
        for (int i = 0; i < cells.Length; i++)
            sum.cells[i] = cells[i] + (factor * other.cells[i]);
        return sum;
    }
}
