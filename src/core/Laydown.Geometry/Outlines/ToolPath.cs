using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>What a cutting tool asks of the distance between two pieces.</summary>
/// <param name="ToolMm">Diameter of the tool, or width of the kerf, mm; 0 for a knife.</param>
/// <param name="BridgeMm">What is to be to spare beside the tool, mm; 0 where two pieces may share one cut.</param>
/// <param name="FlattenMm">How far curves were flattened off, mm.</param>
public sealed record ToolPath(double ToolMm, double BridgeMm, double FlattenMm = Curves.UsualToleranceMm)
{
    /// <summary>Diameter of the tool, mm; 0 to 100.</summary>
    public double ToolMm { get; } = Bounds.Within(ToolMm, 0, 100);

    /// <summary>What is to be to spare beside the tool, mm; 0 to 1000.</summary>
    public double BridgeMm { get; } = Bounds.Within(BridgeMm, 0, 1000);

    /// <summary>Least distance between two finished pieces, mm: the tool beside the one does not touch the other, and the rest is to spare.</summary>
    /// <remarks>Chords of flattened curves err inward on both sides, so twice what they err is added.</remarks>
    public double GapMm => ToolMm + BridgeMm + (2 * FlattenMm);
}
