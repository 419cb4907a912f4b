namespace Laydown.Press;

/// <summary>Words for where a figure comes from when it is no printed source.</summary>
public static class FigureSource
{
    /// <summary>It follows from the definition of the quantity; nothing was assumed.</summary>
    public const string Definition = "by definition";

    /// <summary>Derived in this project from plain physics and held against a simulation in the tests.</summary>
    public const string Derived = "own derivation, held against a simulation in the tests";

    /// <summary>Done so in the trade; no text was read.</summary>
    public const string CommonPractice = "common practice, no source";

    /// <summary>A choice of this project on the safe side.</summary>
    public const string OwnRule = "own rule, on the safe side";
}
