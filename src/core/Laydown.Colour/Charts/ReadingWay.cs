namespace Laydown.Colour.Charts;

/// <summary>How a chart is read.</summary>
public enum ReadingWay
{
    /// <summary>Patch by patch.</summary>
    Hand,

    /// <summary>Row by row in one pull; each row starts and ends with a black edge.</summary>
    Strip,
}
