namespace Laydown.Shop.Proof;

/// <summary>In which view a pin was set.</summary>
public enum PinView
{
    /// <summary>Lamp off.</summary>
    Day,

    /// <summary>Lamp on.</summary>
    Night,
}
