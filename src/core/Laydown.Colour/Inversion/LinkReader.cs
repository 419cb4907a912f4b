namespace Laydown.Colour.Inversion;

/// <summary>Reads a link table between its nodes: multilinear, the plain way that every faster one is held against.</summary>
public sealed class LinkReader
{
    private readonly LinkTables link;
    private readonly float[] table;

    /// <summary>A reader of a link.</summary>
    /// <exception cref="ArgumentException">The table does not fit its steps.</exception>
    public LinkReader(LinkTables link)
    {
        if (link.PreCurves.Count != link.Channels || link.Table.Count != Math.Pow(link.Steps, link.Channels) * link.InkNames.Count)
        {
            throw new ArgumentException(
                Invariant($"{link.Table.Count} values, {link.PreCurves.Count} curves: wanted steps^channels × inks and a curve a channel."), nameof(link));
        }

        (this.link, table) = (link, [.. link.Table]);
    }

    /// <summary>Inks for channel values from 0 to 1.</summary>
    public void Read(ReadOnlySpan<double> channels, Span<double> inks)
    {
        Span<double> inside = stackalloc double[link.Channels];
        int lowest = 0, count = link.InkNames.Count;
        for (int channel = 0; channel < link.Channels; channel++)
        {
            double place = Curve(link.PreCurves[channel], channels[channel]) * (link.Steps - 1);
            int cell = Math.Min((int)place, link.Steps - 2);
            inside[channel] = place - cell;
            lowest = (lowest * link.Steps) + cell;
        }

        inks.Clear();
        for (int corner = 0; corner < 1 << link.Channels; corner++)
        {
            double share = 1;
            int node = lowest;
            for (int channel = 0, stride = 1; channel < link.Channels; channel++, stride *= link.Steps)
            {
                // The last channel runs fastest, so it is the lowest bit.
                double part = inside[link.Channels - 1 - channel];
                bool up = ((corner >> channel) & 1) != 0;
                share *= up ? part : 1 - part;
                node += up ? stride : 0;
            }

            for (int ink = 0; ink < count && share > 0; ink++)
                inks[ink] += share * table[(node * count) + ink];
        }
    }

    private static double Curve(IReadOnlyList<float> curve, double value)
    {
        double place = Math.Clamp(value, 0, 1) * (curve.Count - 1);
        int step = Math.Min((int)place, curve.Count - 2);
        return curve[step] + ((curve[step + 1] - curve[step]) * (place - step));
    }
}
