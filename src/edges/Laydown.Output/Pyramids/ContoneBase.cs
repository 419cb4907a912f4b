using Laydown.Formats.TiffWriting;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Output.Pyramids;

/// <summary>Sums over 2 × 2 pixels of a contone press file.</summary>
internal sealed class ContoneBase : IBaseLevel
{
    private readonly ContoneTiffReader reader;
    private readonly byte[] upper, lower;

    private ContoneBase(ContoneTiffReader reader)
    {
        this.reader = reader;
        upper = new byte[checked(reader.Columns * reader.Inks)];
        lower = new byte[upper.Length];
        Shape = ShapeOf(reader);
    }

    public PressFileShape Shape { get; }

    public int Level => 1;

    public uint Unit => 1;

    /// <summary>Opens the file.</summary>
    public static Reading<IBaseLevel> Open(string path) =>
        ContoneTiffReader.Open(path).Then(reader => Reading.Of<IBaseLevel>(new ContoneBase(reader)));

    /// <summary>What a contone file holds.</summary>
    public static PressFileShape ShapeOf(ContoneTiffReader reader) =>
        new(reader.Columns, reader.Rows, reader.Inks, 8, reader.Ppi, reader.Ppi, reader.InkNames);

    public void Sum(int row, ulong[] sums)
    {
        int inks = reader.Inks, columns = reader.Columns, half = (columns + 1) / 2;
        bool two = (2 * row) + 1 < reader.Rows;
        reader.ReadRow(2 * row, 0, upper);
        if (two)
            reader.ReadRow((2 * row) + 1, 0, lower);
        else
            lower.AsSpan().Clear();
        for (int ink = 0; ink < inks; ink++)
        {
            Span<ulong> into = sums.AsSpan(ink * half, half);
            int at = ink;
            for (int x = 0; x < columns / 2; x++, at += 2 * inks)
                into[x] = (ulong)(upper[at] + upper[at + inks] + lower[at] + lower[at + inks]);
            if (half > columns / 2)
                into[^1] = (ulong)(upper[at] + lower[at]);
        }
    }

    public void Dispose() => reader.Dispose();
}
