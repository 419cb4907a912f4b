namespace Laydown.Press.Stocks;

/// <summary>What the bare sheet does with light.</summary>
public enum SheetLight
{
    /// <summary>Nothing comes through.</summary>
    Opaque,

    /// <summary>Light comes through diffused.</summary>
    Opal,

    /// <summary>One sees through it.</summary>
    Clear,
}
