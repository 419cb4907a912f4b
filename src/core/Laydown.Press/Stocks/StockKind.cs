namespace Laydown.Press.Stocks;

/// <summary>How a material comes.</summary>
public enum StockKind
{
    /// <summary>A full board.</summary>
    Board,

    /// <summary>A pre-cut piece, printed to its edge.</summary>
    Blank,

    /// <summary>A roll.</summary>
    Roll,
}
