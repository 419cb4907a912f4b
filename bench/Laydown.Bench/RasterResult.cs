namespace Laydown.Bench;

/// <summary>The raster engine: its stages beside general libraries, and whole boards beside a chain of such libraries.</summary>
/// <param name="Bench">Which bench.</param>
/// <param name="Lanes">Widest kernels of this processor.</param>
/// <param name="Rows">Stages.</param>
/// <param name="Boards">Whole sheets.</param>
/// <param name="Pages">PDF pages made into dots while they are rendered.</param>
/// <param name="Chain">The chain, in words.</param>
/// <param name="ChainMpxPerS">The chain on a part of the same sheet, million dots of one ink a second of wall time.</param>
/// <param name="ChainRatio">How many times as fast the board of one bit was; null where it did not run.</param>
/// <param name="GrowthExponent">Processor time grows with pixels to this power, from 0.4 to 2.4 thousand million.</param>
/// <param name="CpuSeconds">Processor time of all boards, s.</param>
/// <param name="PeakMb">Most memory of a board, MiB.</param>
/// <param name="Checksum">Hash over all checksums.</param>
internal sealed record RasterResult(
    string Bench, string Lanes, IReadOnlyList<RasterRow> Rows, IReadOnlyList<BoardRow> Boards, IReadOnlyList<OverlapRow> Pages, string Chain, double ChainMpxPerS, double? ChainRatio,
    double? GrowthExponent, double CpuSeconds, double PeakMb, string Checksum);
