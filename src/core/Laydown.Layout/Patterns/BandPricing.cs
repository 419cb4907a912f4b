namespace Laydown.Layout.Patterns;

/// <summary>Sheets of three stages: bands across, columns in a band, pieces piled in a column, each trimmed to its size.</summary>
/// <remarks>Bands of every breadth that pieces add up to, or of a fixed choice of them where there are too many; then the limit is no bound for all sheets.</remarks>
internal sealed class BandPricing : Pricing
{
    private const int MostWork = 60_000_000;

    private readonly int width;
    private readonly StripTable table;
    private readonly int[] breadths;
    private readonly int leastBand;
    private readonly float[] row;
    private readonly List<(int Breadth, float Worth, int Level)> columns = [];
    private readonly float[][] rows;

    internal BandPricing(IReadOnlyList<Lie> lies, int width, int height, int leastBand, int mostBand)
        : base([.. lies.Where(l => l.Along <= width && l.Across <= Math.Min(height, mostBand))], width, height, piles: true)
    {
        this.width = width;
        this.leastBand = leastBand;
        Lie[] fitting = [.. lies.Where(l => l.Along <= width && l.Across <= Math.Min(height, mostBand))];
        table = new(fitting, l => l.Across, l => l.Along, height);
        breadths = Choice(fitting, Math.Min(height, mostBand));
        row = new float[width + 1];
        rows = [.. Enumerable.Range(0, table.Breadths.Length + 1).Select(_ => new float[width + 1])];
    }

    private protected override void Fill(float[] worth, int[] most)
    {
        table.Fill(worth, most);
        Bands.Clear();
        float value = 0;
        foreach (int breadth in breadths)
        {
            Columns(breadth);
            Array.Clear(row);
            foreach ((int column, float columnWorth, _) in columns)
                StripTable.Grow(row, row, row, column, columnWorth);
            if (row[width] > value)
            {
                value = row[width];
                Bands.Add((Math.Max(breadth, leastBand), value, breadth));
            }
        }
    }

    private protected override List<List<Lie>> Trace(int breadth, int key)
    {
        Columns(key);
        for (int c = 0; c < columns.Count; c++)
            StripTable.Grow(rows[c], rows[c + 1], rows[c + 1], columns[c].Breadth, columns[c].Worth);
        List<List<Lie>> band = [];
        for (int c = columns.Count, x = width; c > 0;)
        {
            if (rows[c][x] == rows[c - 1][x])
            {
                c--;
                continue;
            }

            List<Lie> column = [];
            table.Trace(columns[c - 1].Level, key, column);
            band.Add(column);
            x -= columns[c - 1].Breadth;
        }

        return band;
    }

    // A wider column of the same worth is of no use.
    private void Columns(int breadth)
    {
        columns.Clear();
        float value = 0;
        for (int l = 0; l < table.Breadths.Length; l++)
            if (table.Adds(l) && table.Worth(l, breadth) > value)
            {
                value = table.Worth(l, breadth);
                columns.Add((table.Breadths[l], value, l));
            }
    }

    private int[] Choice(IReadOnlyList<Lie> lies, int mostBand)
    {
        bool[] reached = new bool[mostBand + 1];
        reached[0] = true;
        foreach (int across in lies.Select(l => l.Across).Distinct().Order())
            for (int y = across; y <= mostBand; y++)
                reached[y] |= reached[y - across];
        int[] all = [.. Enumerable.Range(1, mostBand).Where(y => reached[y])];
        long work = (long)all.Length * table.Breadths.Length * width / 8;
        if (work <= MostWork)
            return all;

        HashSet<int> kept = [.. lies.SelectMany(l => Enumerable.Range(1, mostBand / l.Across).Select(k => k * l.Across))];
        int every = (int)(work / MostWork) + 1;
        return [.. all.Where((y, i) => kept.Contains(y) || i % every == 0)];
    }
}
