using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Bench.Layout;

/// <summary>A sign shop's normal day from a seed: a thousand pieces of many jobs, three sizes of board.</summary>
/// <remarks>
/// Mix of sizes: common practice, no source. Lengths in µm, sides grown by a gap of 6 mm, boards less a margin of 10 mm on each side.
/// </remarks>
internal static class ShopDay
{
    private const int Pieces = 1000;
    private const int GapUm = 6_000;
    private const int MarginUm = 10_000;
    private const double EuroPerM2 = 7;

    /// <summary>Wider pieces lie along the board: no board takes them across.</summary>
    private const int WidestMm = 2000;

    private static readonly (int Width, int Height)[] Boards = [(1220, 2440), (1525, 3050), (2030, 3050)];

    // Least and most of the sides in mm, and of the copies; a line is drawn as often as its first figure tells, of 100.
    private static readonly (int Share, int LeastW, int MostW, int LeastH, int MostH, int LeastCopies, int MostCopies)[] Kinds =
    [
        (20, 100, 300, 60, 220, 6, 40),
        (25, 297, 450, 210, 320, 2, 16),
        (25, 420, 900, 400, 650, 1, 10),
        (20, 600, 1250, 500, 1000, 1, 5),
        (10, 1000, 2400, 400, 1180, 1, 3),
    ];

    /// <summary>The day of a seed.</summary>
    public static RectProblem Of(int seed)
    {
        Chance chance = new(seed);
        List<RectPiece> pieces = [];
        int left = Pieces;
        while (left > 0)
        {
            RectPiece piece = Draw(chance, pieces.Count, left);
            pieces.Add(piece);
            left -= piece.Copies;
        }

        return new(
            [.. Boards.Select(b => new RectStock(
                Invariant($"{b.Width} x {b.Height}"), Usable(b.Width), Usable(b.Height), null, b.Width * b.Height * EuroPerM2 * 1e-6, []))],
            pieces,
            new(CutProcess.Free));
    }

    private static int Usable(int sideMm) => (sideMm * 1000) - (2 * MarginUm) + GapUm;

    private static RectPiece Draw(Chance chance, int index, int left)
    {
        int kind = 0;
        for (int at = chance.Below(100) - Kinds[0].Share; at >= 0; at -= Kinds[kind].Share)
            kind++;

        var (_, leastW, mostW, leastH, mostH, leastCopies, mostCopies) = Kinds[kind];
        int width = leastW + chance.Below(mostW - leastW + 1), height = leastH + chance.Below(mostH - leastH + 1);
        int copies = Math.Min(left, leastCopies + chance.Below(mostCopies - leastCopies + 1));
        return new(Invariant($"job {index + 1}"), (width * 1000) + GapUm, (height * 1000) + GapUm, copies, chance.Below(10) < 6 || width > WidestMm);
    }
}
