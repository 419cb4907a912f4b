namespace Laydown.Shop.Run;

/// <summary>A rectangle of one level of a press file.</summary>
/// <param name="Level">0 has every value of the file; level n the means of 2^n × 2^n of them, rounded, halves upward.</param>
/// <param name="Left">First column of the level.</param>
/// <param name="Top">First row of the level.</param>
/// <param name="Columns">How many, at least 1.</param>
/// <param name="Rows">How many, at least 1.</param>
public readonly record struct PressPart(int Level, int Left, int Top, int Columns, int Rows)
{
    /// <summary>The same part of a sheet of that width seen from its other face.</summary>
    /// <param name="width">Columns of the whole level.</param>
    public PressPart Reversed(int width) => this with { Left = width - Left - Columns };

    /// <summary>The same part of a sheet of that height that was turned head to foot.</summary>
    /// <param name="height">Rows of the whole level.</param>
    public PressPart Upended(int height) => this with { Top = height - Top - Rows };
}
