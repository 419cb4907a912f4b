namespace Laydown.Formats.Dxf;

/// <summary>How much of a DXF file is taken.</summary>
/// <param name="MostBytes">Longest file, bytes.</param>
/// <param name="MostEntities">Most entities.</param>
/// <param name="MostPoints">Most corners of all lines together, curves flattened.</param>
public sealed record DxfLimits(long MostBytes = 256L << 20, int MostEntities = 300_000, int MostPoints = 5_000_000);
