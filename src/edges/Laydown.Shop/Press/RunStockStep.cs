namespace Laydown.Shop.Press;

/// <summary>What is done with the stock of a run.</summary>
public enum RunStockStep
{
    /// <summary>Kept back.</summary>
    Reserve,

    /// <summary>Given free again.</summary>
    Release,

    /// <summary>Taken; usable rests come in.</summary>
    Take,
}
