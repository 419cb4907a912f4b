using Laydown.Colour.Inversion;

namespace Laydown.Formats.Icc;

/// <summary>What an output profile holds besides its tables, and in which edition it is written.</summary>
public sealed record OutputProfileOptions
{
    /// <summary>ICC v2.4 for CMYK: 16-bit tables, no ink names.</summary>
    public static OutputProfileOptions Usual { get; } = new();

    /// <summary>Edition of the format.</summary>
    public IccEdition Edition { get; init; } = IccEdition.V2;

    /// <summary>Names of the inks in the order of the tables, ASCII, 1 to 31 characters; empty for CMYK without names.</summary>
    public IReadOnlyList<string> InkNames { get; init; } = [];

    /// <summary>The readings behind the tables as CGATS.17 text, ASCII; empty to leave them out.</summary>
    public string Readings { get; init; } = "";

    /// <summary>Limits that each ink must keep after rounding to 8 bits too; null to round down to 16 bits only.</summary>
    public InkLimits? Limits { get; init; }
}
