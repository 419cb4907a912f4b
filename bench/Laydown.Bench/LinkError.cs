using Laydown.Colour.Inversion;
using Laydown.Raster.Tiles;

namespace Laydown.Bench;

/// <summary>How far inks made by a link lie from the same way through its cells in double arithmetic.</summary>
internal static class LinkError
{
    private const int Every = 61;

    /// <summary>Largest difference, codes of 255, over every 61st pixel.</summary>
    /// <param name="link">The link, its curves straight.</param>
    /// <param name="source">Channels.</param>
    /// <param name="inks">What was made of them.</param>
    public static double Of(LinkTables link, Tile source, Tile inks)
    {
        float[] table = [.. link.Table];
        int count = link.InkNames.Count;
        double worst = 0;
        double[] exact = new double[count];
        for (int pixel = 0; pixel < source.Rows * source.Columns; pixel += Every)
        {
            (int row, int x) = (pixel / source.Columns, pixel % source.Columns);
            double[] places = [.. Enumerable.Range(0, link.Channels).Select(c => source.Row(c, row)[x] / (double)Tile.Full * (link.Steps - 1))];
            Mix(link, table, places, exact);
            for (int ink = 0; ink < count; ink++)
                worst = Math.Max(worst, Math.Abs((inks.Row(ink, row)[x] / 257.0) - (exact[ink] * 255)));
        }

        return worst;
    }

    // The lowest corner, and for each channel in the order of the parts its part of the way to the next corner.
    private static void Mix(LinkTables link, float[] table, double[] places, double[] inks)
    {
        int[] cells = [.. places.Select(p => Math.Min((int)p, link.Steps - 2))];
        int node = cells.Aggregate(0, (n, c) => (n * link.Steps) + c) * inks.Length;
        for (int ink = 0; ink < inks.Length; ink++)
            inks[ink] = table[node + ink];
        foreach (int channel in Enumerable.Range(0, places.Length).OrderByDescending(c => places[c] - cells[c]))
        {
            int next = node + ((int)Math.Pow(link.Steps, places.Length - 1 - channel) * inks.Length);
            for (int ink = 0; ink < inks.Length; ink++)
                inks[ink] += (places[channel] - cells[channel]) * (table[next + ink] - table[node + ink]);
            node = next;
        }
    }
}
