namespace Laydown.Press.Stocks;

/// <summary>Which side of the stock its flutes or grain run along.</summary>
public enum GrainDirection
{
    /// <summary>No flutes, no grain.</summary>
    None,

    /// <summary>Along the width.</summary>
    AlongWidth,

    /// <summary>Along the length.</summary>
    AlongLength,
}
