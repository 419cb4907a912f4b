namespace Laydown.Shop.Layers;

/// <summary>How strong the white between two pictures may be.</summary>
public enum WhiteChoice
{
    /// <summary>One strength for the whole piece, as named.</summary>
    Fixed,

    /// <summary>One of a few strengths, chosen for the piece.</summary>
    Stepped,

    /// <summary>Anything between the least and the most that is named.</summary>
    Free,
}
