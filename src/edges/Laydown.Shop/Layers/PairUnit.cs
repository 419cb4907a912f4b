namespace Laydown.Shop.Layers;

/// <summary>What places on pictures are counted in.</summary>
public enum PairUnit
{
    /// <summary>Percent of the picture's width and height, from its upper left corner.</summary>
    Percent,

    /// <summary>Millimetres of the finished piece as if the picture were stretched over it, from its upper left corner.</summary>
    Mm,
}
