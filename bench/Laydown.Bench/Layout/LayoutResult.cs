namespace Laydown.Bench.Layout;

/// <summary>What the layout bench found.</summary>
/// <param name="Bench"><c>layout</c>.</param>
/// <param name="Groups">Families and variants.</param>
/// <param name="CpuSeconds">Processor time of all, s.</param>
/// <param name="Checksum">Hash over all values.</param>
internal sealed record LayoutResult(string Bench, IReadOnlyList<LayoutGroup> Groups, double CpuSeconds, string Checksum);
