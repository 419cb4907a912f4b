namespace Laydown.Layout.Patterns;

/// <summary>Sheets of two stages: strips across, pieces side by side in a strip, each trimmed to its size. Exact but for bounds on the whole sheet.</summary>
internal sealed class StripPricing(IReadOnlyList<Lie> lies, int width, int height, int leastBand, int mostBand)
    : Pricing([.. lies.Where(l => l.Along <= width && l.Across <= Math.Min(height, mostBand))], width, height, piles: false)
{
    private readonly int width = width;
    private readonly int height = height;
    private readonly int mostBand = mostBand;
    private readonly StripTable table = new(lies.Where(l => l.Along <= width && l.Across <= Math.Min(height, mostBand)), l => l.Along, l => l.Across, width);

    private protected override void Fill(float[] worth, int[] most)
    {
        table.Fill(worth, most);
        Bands.Clear();
        float value = 0;
        for (int l = 0; l < table.Breadths.Length; l++)
            if (table.Adds(l) && table.Worth(l, width) > value)
            {
                value = table.Worth(l, width);
                if (Math.Max(table.Breadths[l], leastBand) is int breadth && breadth <= Math.Min(height, mostBand))
                    Bands.Add((breadth, value, l));
            }
    }

    private protected override List<List<Lie>> Trace(int breadth, int key)
    {
        List<Lie> strip = [];
        table.Trace(key, width, strip);
        return [.. strip.Select(l => new List<Lie> { l })];
    }
}
