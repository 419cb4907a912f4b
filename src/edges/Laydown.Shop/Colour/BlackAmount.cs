namespace Laydown.Shop.Colour;

/// <summary>How much black a separation uses.</summary>
public enum BlackAmount
{
    /// <summary>Late and only where darkness asks for it.</summary>
    Least,

    /// <summary>From the middle tones downward.</summary>
    Medium,

    /// <summary>Early: steadiest greys, least ink.</summary>
    Most,
}
