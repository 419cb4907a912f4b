using Laydown.Layout.Rectangles;

namespace Laydown.Layout.Patterns;

/// <summary>The sheets a problem may be cut from, each with what finds its best pattern. Not for several threads: every worker has its own.</summary>
internal sealed class CutShop
{
    private readonly RectProblem problem;
    private readonly List<(int Stock, bool Upright, Pricing Pricing)> pricings = [];

    internal CutShop(RectProblem problem)
    {
        this.problem = problem;
        for (int s = 0; s < problem.Stocks.Count; s++)
            if (problem.Stocks[s].KeepOuts.Count == 0 && problem.Stocks[s].Copies is not 0)
                pricings.Add((s, problem.Rules.FirstCutUpright, PricingOf(problem.Stocks[s], problem.Rules.FirstCutUpright)));
        Limited = [.. Enumerable.Range(0, problem.Stocks.Count).Where(s => problem.Stocks[s].Copies is not null)];
        MostCost = problem.Stocks.Max(s => s.Cost);
    }

    /// <summary>Stocks of which there are only so many.</summary>
    internal int[] Limited { get; }

    /// <summary>Cost of the dearest sheet.</summary>
    internal double MostCost { get; }

    /// <summary>Cost of a sheet.</summary>
    internal double Cost(int stock) => problem.Stocks[stock].Cost;

    /// <summary>Whether a piece fits on some sheet.</summary>
    internal bool Fits(int piece) => pricings.Any(p => Lies(p.Stock, p.Upright).Any(l => l.Piece == piece));

    /// <summary>A good pattern of each sheet at given prices, worth more than asked for where there is one, and the most any could be worth.</summary>
    internal IEnumerable<(CutPattern Pattern, double Limit)> Best(float[] worth, int[] most, IReadOnlyList<int> there, Func<int, double> enough)
    {
        foreach ((int stock, bool upright, Pricing pricing) in pricings)
        {
            int limited = Array.IndexOf(Limited, stock);
            if (limited >= 0 && there[limited] <= 0)
                continue;
            CutPlan plan = pricing.Best(worth, most, enough(stock));
            yield return (new(stock, problem.Stocks[stock].Cost, upright, plan), pricing.Limit);
        }
    }

    private Pricing PricingOf(RectStock stock, bool upright)
    {
        (int along, int across) = upright ? (stock.Height, stock.Width) : (stock.Width, stock.Height);
        CutGrid gridAlong = new(along, Sizes()), gridAcross = new(across, Sizes());
        Lie[] lies = [.. AllLies(upright).Where(l => l.RealAlong <= along && l.RealAcross <= across)
            .Select(l => l with { Along = gridAlong.Up(l.RealAlong), Across = gridAcross.Up(l.RealAcross) })];
        int least = gridAcross.Up(problem.Rules.LeastStrip), most = problem.Rules.MostStrip > 0 ? gridAcross.Down(problem.Rules.MostStrip) : int.MaxValue;
        return problem.Rules.MostStages == 2
            ? new StripPricing(lies, gridAlong.Steps, gridAcross.Steps, least, most)
            : new BandPricing(lies, gridAlong.Steps, gridAcross.Steps, least, most);
    }

    private IEnumerable<int> Sizes() => problem.Pieces.SelectMany(p => new[] { p.Width, p.Height });

    private IEnumerable<Lie> Lies(int stock, bool upright)
    {
        RectStock s = problem.Stocks[stock];
        (int along, int across) = upright ? (s.Height, s.Width) : (s.Width, s.Height);
        int most = problem.Rules.MostStrip > 0 ? Math.Min(across, problem.Rules.MostStrip) : across;
        return AllLies(upright).Where(l => l.RealAlong <= along && l.RealAcross <= most);
    }

    private IEnumerable<Lie> AllLies(bool upright)
    {
        for (int p = 0; p < problem.Pieces.Count; p++)
        {
            RectPiece piece = problem.Pieces[p];
            Lie straight = new(p, 0, 0, piece.Width, piece.Height, false), turned = new(p, 0, 0, piece.Height, piece.Width, true);
            yield return upright ? straight with { RealAlong = piece.Height, RealAcross = piece.Width } : straight;
            if (piece.MayTurn && piece.Width != piece.Height)
                yield return upright ? turned with { RealAlong = piece.Width, RealAcross = piece.Height } : turned;
        }
    }
}
