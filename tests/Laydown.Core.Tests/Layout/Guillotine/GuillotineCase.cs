using Laydown.Instances.Rectangles;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Guillotine;

/// <summary>Turns published and drawn instances into problems, and layouts back into what the checker judges.</summary>
internal static class GuillotineCase
{
    public static RectProblem Problem(RectInstance instance, bool mayTurn, int stages = 0, bool upright = false, int offcutLeast = 0) => new(
        [.. instance.Bins.Select((b, i) => new RectStock(
            Invariant($"stock {i}"), b.Width, b.Height, b.Copies, b.Cost,
            [.. instance.Defects.Where(d => d.Bin == i).Select(d => new Laydown.Layout.Packing.Box(d.X, d.Y, d.Width, d.Height))]))],
        [.. instance.Items.Select((p, i) => new RectPiece(Invariant($"piece {i}"), p.Width, p.Height, p.Copies, mayTurn))],
        new(CutProcess.Guillotine, stages, upright, OffcutLeastSide: offcutLeast));

    public static IReadOnlyList<FilledBin> Bins(RectLayout layout) =>
        [.. layout.Sheets.Select(s => new FilledBin(
            s.Stock, s.Repeats, [.. s.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]))];

    public static double Cost(RectInstance instance, RectLayout layout) => layout.Sheets.Sum(s => s.Repeats * instance.Bins[s.Stock].Cost);

    /// <summary>Boards of several sizes, some of them few, and pieces that all fit the largest, which is there without end.</summary>
    public static RectInstance Drawn(int seed, int pieces, bool damaged)
    {
        Random chance = new(seed);
        RectBin[] bins = [.. Enumerable.Range(0, 3).Select(i =>
            new RectBin(300 + chance.Next(300), 300 + chance.Next(300), 1 + chance.Next(3), 60 + chance.Next(60))).Append(new(700, 600, null, 200.5))];
        RectDefect[] defects = damaged
            ? [.. Enumerable.Range(0, 6).Select(i => new RectDefect(i % 3, chance.Next(280), chance.Next(280), 10 + chance.Next(60), 10 + chance.Next(60)))]
            : [];
        RectItem[] items = [.. Enumerable.Range(0, pieces).Select(i => new RectItem(20 + chance.Next(280), 20 + chance.Next(280), 1 + chance.Next(4), -1))];
        return new(Invariant($"drawn {seed}"), bins, items, defects, new Dictionary<string, string>());
    }
}
