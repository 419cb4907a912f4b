namespace Laydown.Shop.Layers;

/// <summary>How the planes of a look came about.</summary>
public enum LookHow
{
    /// <summary>Solved from two pictures, one for the day and one for the lamp.</summary>
    Solved,

    /// <summary>Separated from the artwork's pages as press files are.</summary>
    Separated,
}
