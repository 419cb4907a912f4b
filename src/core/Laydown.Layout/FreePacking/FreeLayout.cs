namespace Laydown.Layout.FreePacking;

/// <summary>Filled sheets with their repeats, and how good they are.</summary>
internal sealed class FreeLayout
{
    internal FreeLayout(FreeModel model, IReadOnlyList<FreeSheet> sheets, ReadOnlySpan<int> left)
    {
        Sheets = sheets;
        Left = left.ToArray();
        UsedOf = new int[model.Stocks];
        foreach (FreeSheet sheet in sheets)
            UsedOf[sheet.Board.Stock] += sheet.Repeats;
        Cost = model.CostOf(UsedOf);
        for (int t = 0; t < Left.Length; t++)
            LeftArea += (double)Left[t] * model.Area[t];
        Kept = model.Problem.Rules.OffcutWorth > 0 ? FreeOffcuts.Worth(model, sheets) : 0;
        Apart = model.HasGroups ? FreeGroups.Apart(model, sheets) : 0;
        Emptiest = sheets.Count == 0 ? 0 : sheets.Min(s => (double)s.Board.Used / model.BareArea[s.Board.Stock]);
    }

    internal IReadOnlyList<FreeSheet> Sheets { get; }

    /// <summary>Copies without a place, by piece.</summary>
    internal int[] Left { get; }

    /// <summary>Area of the copies without a place.</summary>
    internal double LeftArea { get; }

    /// <summary>Sheets used by stock.</summary>
    internal int[] UsedOf { get; }

    internal double Cost { get; }

    /// <summary>What the rests are worth.</summary>
    internal double Kept { get; }

    /// <summary>How many sheets more than one carry pieces of a group, over all groups.</summary>
    internal int Apart { get; }

    /// <summary>Fill of the emptiest sheet: the less, the larger the rest that can be kept.</summary>
    internal double Emptiest { get; }

    /// <summary>Whether every copy has a place.</summary>
    internal bool IsWhole => LeftArea == 0;

    /// <summary>All placed first, then cost less what is kept, then groups together, then fewest different sheets, then the emptiest last one.</summary>
    internal bool IsBetterThan(FreeLayout? other)
    {
        if (other is null || LeftArea != other.LeftArea)
            return other is null || LeftArea < other.LeftArea;

        (double ours, double theirs) = (Cost - Kept, other.Cost - other.Kept);
        if (ours < FreeModel.Under(theirs) || theirs < FreeModel.Under(ours))
            return ours < theirs;

        return (Apart, Sheets.Count, Emptiest).CompareTo((other.Apart, other.Sheets.Count, other.Emptiest)) < 0;
    }
}
