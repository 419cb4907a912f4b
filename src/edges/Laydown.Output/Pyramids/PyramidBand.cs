namespace Laydown.Output.Pyramids;

/// <summary>What one band gives: packed tiles of the lowest level, rows of the levels above, and the sums of its one row at the last of them.</summary>
/// <param name="layout">Sizes.</param>
/// <param name="number">Band from 0.</param>
/// <param name="last">The level of which it has one row at most.</param>
internal sealed class PyramidBand(PyramidLayout layout, int number, int last)
{
    private readonly PyramidRows lowest = new(layout, layout.From);

    /// <summary>Band from 0.</summary>
    public int Number => number;

    /// <summary>Tiles of the lowest level; bytes are null where all codes are equal.</summary>
    public IReadOnlyList<(int Ink, int Column, byte[]? Packed, byte Code)> Tiles { get; private set; } = [];

    /// <summary>Rows above the lowest level, ink after ink.</summary>
    public List<(int Level, int Row, byte[] Codes)> Rows { get; } = [];

    /// <summary>Sums of its row at the last level; null where no level lies above.</summary>
    public ulong[]? Carried { get; private set; }

    /// <summary>Takes a row.</summary>
    public void Keep(int level, int row, byte[] codes, ulong[] sums)
    {
        if (level == layout.From)
            lowest.Take(row, codes);
        else
            Rows.Add((level, row, codes));
        if (level == last && last < layout.Levels - 1)
            Carried = [.. sums];
    }

    /// <summary>Packs the tiles of the lowest level.</summary>
    public void Pack() => Tiles = [.. lowest.Packed()];
}
