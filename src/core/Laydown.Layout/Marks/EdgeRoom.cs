namespace Laydown.Layout.Marks;

/// <summary>A width along each edge of a piece, mm, 0 or more.</summary>
/// <param name="LeftMm">Along the left edge.</param>
/// <param name="BottomMm">Along the lower edge.</param>
/// <param name="RightMm">Along the right edge.</param>
/// <param name="TopMm">Along the upper edge.</param>
public sealed record EdgeRoom(double LeftMm, double BottomMm, double RightMm, double TopMm)
{
    /// <summary>No width anywhere.</summary>
    public static EdgeRoom None { get; } = new(0, 0, 0, 0);

    /// <summary>The same width along every edge.</summary>
    public static EdgeRoom All(double mm) => new(mm, mm, mm, mm);

    /// <summary>The wider of two at each edge.</summary>
    public EdgeRoom Or(EdgeRoom other) => new(
        Math.Max(LeftMm, other.LeftMm), Math.Max(BottomMm, other.BottomMm), Math.Max(RightMm, other.RightMm), Math.Max(TopMm, other.TopMm));

    /// <summary>What is left of each width beyond a width that is there already; never below 0.</summary>
    public EdgeRoom Beyond(double mm) => new(
        Math.Max(0, LeftMm - mm), Math.Max(0, BottomMm - mm), Math.Max(0, RightMm - mm), Math.Max(0, TopMm - mm));

    /// <summary>Whether there is none.</summary>
    public bool IsNone => this == None;

    /// <summary>The width along one edge, mm.</summary>
    public double Of(PieceEdge edge) => edge switch
    {
        PieceEdge.Left => LeftMm,
        PieceEdge.Bottom => BottomMm,
        PieceEdge.Right => RightMm,
        _ => TopMm,
    };
}
