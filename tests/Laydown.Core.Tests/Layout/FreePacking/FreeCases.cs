using Laydown.Instances.Rectangles;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Sheets;
using static Laydown.Core.Tests.Layout.LayoutData;

namespace Laydown.Core.Tests.Layout.FreePacking;

/// <summary>Problems for the tests of free packing, published and drawn, and the way from an answer to the independent checker.</summary>
internal static class FreeCases
{
    private static readonly ILookup<string, string[]> Items = Rows("2bp-classes-items.csv").ToLookup(r => r[0]);

    /// <summary>The published instances with board sizes, in the order of their table: name, problem, area bound, best published value for free cutting.</summary>
    internal static IEnumerable<(string Name, RectProblem Problem, int AreaBound, int Best)> Published(bool mayTurn) =>
        Rows("2bp-classes-boards.csv").Select(r => (
            r[0],
            new RectProblem(
                [new("board", Number(r[1]), Number(r[2]), null, 1, [])],
                [.. Items[r[0]].Select((i, n) => new RectPiece(Invariant($"{n}"), Number(i[1]), Number(i[2]), 1, mayTurn))],
                new(CutProcess.Free)),
            Number(r[3]),
            Number(r[mayTurn ? 5 : 4])));

    /// <summary>A drawn problem: one to three stocks of which some are few, some with keep-outs, pieces with copies.</summary>
    internal static RectProblem Drawn(int seed)
    {
        Random chance = new(seed);
        RectStock[] stocks = [.. Enumerable.Range(0, 1 + chance.Next(3)).Select(i =>
        {
            int w = 60 + chance.Next(60), h = 60 + chance.Next(60);
            return new RectStock(
                Invariant($"s{i}"), w, h, i > 0 && chance.Next(2) == 0 ? chance.Next(4) : null, w * h * (0.8 + (0.4 * chance.NextDouble())),
                [.. Enumerable.Range(0, chance.Next(3)).Select(_ => new Laydown.Layout.Packing.Box(chance.Next(w - 10), chance.Next(h - 10), 1 + chance.Next(20), 1 + chance.Next(20)))]);
        })];
        RectPiece[] pieces = [.. Enumerable.Range(0, 3 + chance.Next(14)).Select(i =>
            new RectPiece(Invariant($"p{i}"), 5 + chance.Next(50), 5 + chance.Next(50), 1 + chance.Next(4), chance.Next(2) == 0, chance.Next(3) - 1))];
        return new(stocks, pieces, new(CutProcess.Free, OffcutLeastSide: chance.Next(2) * 15, OffcutWorth: chance.Next(2) * 0.5));
    }

    /// <summary>What the independent checker finds wrong.</summary>
    internal static IReadOnlyList<string> Faults(RectProblem problem, RectLayout layout)
    {
        // The checker knows one rule of turning for all items: those that must not turn are looked at here.
        RectInstance instance = new(
            "drawn",
            [.. problem.Stocks.Select(s => new RectBin(s.Width, s.Height, s.Copies, s.Cost))],
            [.. problem.Pieces.Select((p, i) => new RectItem(p.Width, p.Height, p.Copies - layout.Missing[i], -1))],
            [.. problem.Stocks.SelectMany((s, i) => s.KeepOuts.Select(k => new RectDefect(i, k.X, k.Y, k.W, k.H)))],
            new Dictionary<string, string>());
        IReadOnlyList<FilledBin> bins = [.. layout.Sheets.Select(s =>
            new FilledBin(s.Stock, s.Repeats, [.. s.Spots.Select(p => new PlacedRect(p.Piece, p.Place.X, p.Place.Y, p.Place.W, p.Place.H))]))];
        return
        [
            .. RectChecker.Faults(instance, bins, new(MayTurn: true)),
            .. layout.Sheets.SelectMany(s => s.Spots)
                .Where(s => s.Turned ? !problem.Pieces[s.Piece].MayTurn : (s.Place.W, s.Place.H) != (problem.Pieces[s.Piece].Width, problem.Pieces[s.Piece].Height))
                .Select(s => Invariant($"piece {s.Piece} lies turned or is told wrongly")),
        ];
    }

    internal static double Cost(RectProblem problem, RectLayout layout) => layout.Sheets.Sum(s => s.Repeats * problem.Stocks[s.Stock].Cost);

    internal static string Text(RectLayout layout) => string.Join('\n', layout.Sheets.Select(s => Invariant($"{s.Stock} x{s.Repeats}: ") + string.Join("; ", s.Spots)));
}
