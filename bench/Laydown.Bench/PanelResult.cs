namespace Laydown.Bench;

/// <summary>Pairs of pictures solved from files to finished folders.</summary>
/// <param name="Bench">Which bench.</param>
/// <param name="Rows">One for each pair.</param>
/// <param name="Refused">Pairs that were refused, with the reasons.</param>
/// <param name="GrowthExponent">Exponent of processor time over pixels between the two largest of the demo's own sizes; null for pairs from a folder.</param>
/// <param name="TableErrorMean">Mean ΔE00 between the look of inks from the table and of inks solved exactly, both views; null for pairs from a folder.</param>
/// <param name="TableErrorP99">The same, 99th percentile.</param>
/// <param name="PreviewMilliseconds">Time of a preview of 1 Mpx after the weight or the white was changed, the longer of both, ms; null for pairs from a folder.</param>
/// <param name="CpuSeconds">Processor time of all pairs, s.</param>
/// <param name="PeakMb">Most memory held, MiB.</param>
/// <param name="Checksum">SHA-256 over the checksums of all planes.</param>
internal sealed record PanelResult(
    string Bench,
    IReadOnlyList<PanelRow> Rows,
    IReadOnlyList<PanelRefusal> Refused,
    double? GrowthExponent,
    double? TableErrorMean,
    double? TableErrorP99,
    double? PreviewMilliseconds,
    double CpuSeconds,
    double PeakMb,
    string Checksum);
