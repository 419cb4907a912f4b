using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>A small picture of what is printed: coverage of every ink, 0 bare to 1 full, over the whole sheet; rows run along the
/// feed.</summary>
public sealed class BandPicture
{
    private readonly float[] coverage;

    /// <summary>A bare picture.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A count is below 1.</exception>
    public BandPicture(int inks, int rows, int columns)
    {
        Inks = Bounds.Within(inks, 1, 64);
        Rows = Bounds.Within(rows, 1, 100_000);
        Columns = Bounds.Within(columns, 1, 100_000);
        coverage = new float[checked(inks * rows * columns)];
    }

    /// <summary>How many inks.</summary>
    public int Inks { get; }

    /// <summary>Pixels along the feed.</summary>
    public int Rows { get; }

    /// <summary>Pixels across.</summary>
    public int Columns { get; }

    /// <summary>One row of one ink, to read or to write; values outside 0 to 1 are taken as the nearer end.</summary>
    public Span<float> Row(int ink, int row) =>
        coverage.AsSpan(((Bounds.Within(ink, 0, Inks - 1) * Rows) + Bounds.Within(row, 0, Rows - 1)) * Columns, Columns);

    /// <summary>A picture of flat tones: each ink alone, from a fifth to full.</summary>
    /// <remarks>Stands in for artwork that is not at hand: any tone may be in it.</remarks>
    /// <param name="inks">How many inks.</param>
    public static BandPicture Wedges(int inks)
    {
        BandPicture wedges = new(inks, 1, inks * 5);
        for (int ink = 0; ink < inks; ink++)
            for (int step = 0; step < 5; step++)
                wedges.Row(ink, 0)[(ink * 5) + step] = (step + 1) * 0.2f;
        return wedges;
    }
}
