using Laydown.Instances.Rectangles;
using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Patterns;

/// <summary>Problems of cutting stock and their judge.</summary>
internal static class StockData
{
    public static RectProblem Problem(RectInstance instance, int stages, bool upright, bool mayTurn, bool countBoards = false) => new(
        [.. instance.Bins.Select((b, i) => new RectStock(Invariant($"{i}"), b.Width, b.Height, b.Copies, countBoards ? 1 : b.Cost, []))],
        [.. instance.Items.Select((t, i) => new RectPiece(Invariant($"{i}"), t.Width, t.Height, t.Copies, mayTurn))],
        new(CutProcess.Guillotine, stages, upright));

    public static RectInstance Random(int seed, int? copies = null)
    {
        Chance chance = new(seed);
        int width = 60 + chance.Below(80), height = 50 + chance.Below(60);
        return new(
            Invariant($"random {seed}"),
            [new(width, height, copies, width * height), new(width + 20, height - 10, copies, ((width + 20) * (height - 10)) - 100)],
            [.. Enumerable.Range(0, 4 + chance.Below(5)).Select(_ => new RectItem(8 + chance.Below(40), 8 + chance.Below(30), 1 + chance.Below(30), -1))],
            [], new Dictionary<string, string>());
    }

    public static IReadOnlyList<FilledBin> Bins(RectLayout layout) =>
        [.. layout.Sheets.Select(s => new FilledBin(s.Stock, s.Repeats, [.. s.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]))];

    public static double Cost(RectProblem problem, RectLayout layout) => layout.Sheets.Sum(s => s.Repeats * problem.Stocks[s.Stock].Cost);

    /// <summary>A folder of tests/data/layout.</summary>
    public static string Folder(string name)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return Path.Combine(folder!, "tests", "data", "layout", name);
    }
}
