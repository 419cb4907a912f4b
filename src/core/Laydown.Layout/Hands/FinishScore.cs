namespace Laydown.Layout.Hands;

/// <summary>How good a way of finishing is; less is better.</summary>
/// <param name="Left">Copies without a place.</param>
/// <param name="Sheets">Sheets begun; of a roll its length, µm.</param>
/// <param name="Pictures">Different pictures among them.</param>
/// <param name="Spread">1 − mean of the squared fill of all sheets: small where some are full and the last is nearly empty.</param>
internal readonly record struct FinishScore(int Left, long Sheets, int Pictures, double Spread)
{
    internal static FinishScore None => new(int.MaxValue, long.MaxValue, int.MaxValue, 1);

    internal static FinishScore Of(FinishFill fill, FinishTable table)
    {
        if (table.Rules.IsRoll)
            return new(fill.Left, fill.OnFrames.SelectMany(s => s).Select(s => (long)s.Place.Top).DefaultIfEmpty(0).Max(), 0, 0);
        int sheets = fill.Bare.Sum(s => s.Repeats);
        double whole = table.Grown.Area.Area, squares = fill.Bare.Sum(s => s.Repeats * Squared(s.UsedArea / whole));
        int all = sheets;
        for (int i = 0; i < table.Frames.Count; i++)
        {
            FinishFrame frame = table.Frames[i];
            squares += frame.Kept.Repeats * Squared((fill.OnFrames[i].Sum(s => s.Place.Area) + frame.Covered.Sum(c => c.Area)) / whole);
            all += frame.Kept.Repeats;
        }

        return new(fill.Left, sheets, fill.Bare.Count, all == 0 ? 0 : 1 - (squares / all));
    }

    internal bool IsBetterThan(FinishScore other) =>
        (Left, Sheets, Pictures, Spread).CompareTo((other.Left, other.Sheets, other.Pictures, other.Spread)) < 0;

    /// <summary>What the walk goes down.</summary>
    internal double Slope => (1e6 * Left) + Sheets + Spread;

    private static double Squared(double value) => value * value;
}
