using Laydown.Measures;

namespace Laydown.Colour.Charts;

/// <summary>Lays a chart on its stock, over several sheets where one does not hold it.</summary>
/// <remarks>
/// Patches are shuffled by the seed and then exchanged until patches that follow each other in the design, or look nearly alike, no
/// longer sit side by side or one above the other, as far as that can be had: a fault of the press in one place then hits no whole
/// wedge, and a
/// strip reader sees every edge.
/// </remarks>
public static class ChartLayout
{
    /// <summary>Words for the person who reads the chart; gloves by [HSE-RR525], the rest common practice, no source.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "Cure fully and let cool before reading: wet or uncured ink soils the instrument and can harm skin for good.",
        "Nitrile gloves of 0.4 mm until it is cured.",
        "If ink comes off on a white cloth, cure again and do not read.",
    ];

    private const double LabelMm = 8, LineMm = 4, FiducialMm = 4, EdgeMm = 4, TypeMm = 2.8, LeastNameGapMm = 5;

    /// <summary>The sheets of a chart.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="form">Stock, patch size, gaps.</param>
    public static Reading<IReadOnlyList<ChartSheet>> Make(Chart chart, ChartSheetForm form)
    {
        static Reading<IReadOnlyList<ChartSheet>> Refused(string field, string found, string wanted) =>
            Reading.Refused<IReadOnlyList<ChartSheet>>(new InputFault("chart", null, field, found, wanted));
        if (!(form.MarginMm is >= 0 and <= 500))
            return Refused("margin", Invariant($"{form.MarginMm} mm"), "0 mm to 500 mm");
        if (!(form.GapMm is >= 0 and <= 100))
            return Refused("gap", Invariant($"{form.GapMm} mm"), "0 mm to 100 mm");
        if (form.Named && form.GapMm < LeastNameGapMm)
            return Refused("gap", Invariant($"{form.GapMm} mm"), Invariant($"at least {LeastNameGapMm} mm for names under the patches"));
        if (form.Patch.WidthMm < 3 || form.Patch.HeightMm < 3)
            return Refused("patch", form.Patch.ToString(), "at least 3 × 3 mm");

        double left = form.MarginMm + LabelMm + EdgeMm + form.GapMm, top = form.MarginMm + (LineMm * Words(chart, form, 1, 1).Count)
            + LabelMm;
        int columns = Fit(form.Sheet.WidthMm - left - form.MarginMm - EdgeMm - form.GapMm, form.Patch.WidthMm, form.GapMm);
        int rows = Fit(form.Sheet.HeightMm - top - form.MarginMm - FiducialMm - form.GapMm, form.Patch.HeightMm, form.GapMm);
        if (columns < 2 || rows < 1)
            return Refused("sheet", form.Sheet.ToString(),
                Invariant($"room for two patches of {form.Patch} with labels and a border of {form.MarginMm} mm"));
        ChartPatch[] order = Shuffled(chart.Patches, columns, form.Seed);
        int pages = ((order.Length - 1) / (rows * columns)) + 1;
        return Reading.Of<IReadOnlyList<ChartSheet>>([.. Enumerable.Range(0, pages).Select(page => SheetOf(
            chart, form, page + 1, pages, [.. order.Skip(page * rows * columns).Take(rows * columns)], columns, new(left,
                form.Sheet.HeightMm - top)))]);
    }

    /// <summary>Letters of a row: A to Z, then AA, AB and on.</summary>
    /// <param name="row">Row from 1.</param>
    public static string RowName(int row) => row <= 26 ? ((char)('A' + row - 1)).ToString() : RowName((row - 1) / 26) + (char)('A'
        + ((row - 1) % 26));

    private static int Fit(double roomMm, double patchMm, double gapMm) => Math.Max(0, (int)Math.Floor((roomMm + gapMm + 1e-9) / (patchMm
        + gapMm)));

    private static ChartSheet SheetOf(
        Chart chart, ChartSheetForm form, int page, int pages, ChartPatch[] patches, int columns, PointMm corner)
    {
        double stepX = form.Patch.WidthMm + form.GapMm, stepY = form.Patch.HeightMm + form.GapMm;
        PlacedPatch[] placed = [.. patches.Select((p, i) => new PlacedPatch(p, page, (i / columns) + 1, (i % columns) + 1, new(
            corner.XMm + (i % columns * stepX), corner.YMm - form.Patch.HeightMm - (i / columns * stepY), form.Patch.WidthMm,
                form.Patch.HeightMm)))];
        int rows = placed[^1].Row;
        double right = placed.Max(p => p.Place.RightMm), bottom = placed.Min(p => p.Place.YMm);

        // Fiducials stand at three corners of the block, so that a picture of the sheet can be turned upright.
        double above = corner.YMm + Math.Min(form.GapMm, LabelMm - FiducialMm - 2);
        List<RectMm> marks =
        [
            new(form.MarginMm, above, FiducialMm, FiducialMm),
            new(right + form.GapMm, above, FiducialMm, FiducialMm),
            new(form.MarginMm, bottom - form.GapMm - FiducialMm, FiducialMm, FiducialMm),
        ];
        List<ChartLabel> labels = Head(chart, form, page, pages);
        for (int column = 1; column <= Math.Min(columns, placed.Length); column++)
            labels.Add(new(Invariant($"{column}"), new(corner.XMm + ((column - 1) * stepX) + 1, above + 1), TypeMm));
        if (form.Named)
            labels.AddRange(placed.Select(p => Under(p, form)));
        for (int row = 1; row <= rows; row++)
        {
            RectMm first = placed[(row - 1) * columns].Place, last = placed[Math.Min(row * columns, placed.Length) - 1].Place;
            labels.Add(new(RowName(row), new(form.MarginMm, first.YMm + (first.HeightMm / 2) - 1), TypeMm));
            if (form.Way == ReadingWay.Strip)
            {
                marks.Add(new(first.XMm - form.GapMm - EdgeMm, first.YMm, EdgeMm, first.HeightMm));
                marks.Add(new(last.RightMm + form.GapMm, last.YMm, EdgeMm, last.HeightMm));
            }
        }

        return new(page, form.Sheet, placed, marks, labels);
    }

    private static ChartLabel Under(PlacedPatch patch, ChartSheetForm form)
    {
        int most = Math.Max(3, (int)(form.Patch.WidthMm / (0.6 * TypeMm)));
        string name = patch.Patch.Part.Length <= most ? patch.Patch.Part : patch.Patch.Part[..(most - 1)] + "…";
        return new(name, new(patch.Place.XMm, patch.Place.YMm - TypeMm - 1), TypeMm);
    }

    private static List<ChartLabel> Head(Chart chart, ChartSheetForm form, int page, int pages) => [.. Words(chart, form, page, pages)
        .Select((line, i) => new ChartLabel(line, new(form.MarginMm, form.Sheet.HeightMm - form.MarginMm - (LineMm * (i + 1)) + 1),
            TypeMm))];

    // Lines that fit between the borders: no letter of the type is wider than its em, and six tenths of it is the mean of a wide line.
    private static List<string> Words(Chart chart, ChartSheetForm form, int page, int pages)
    {
        int most = Math.Max(8, (int)((form.Sheet.WidthMm - (2 * form.MarginMm)) / (0.6 * TypeMm)));
        string[] sentences =
        [
            Invariant($"Chart: {chart.Name}, {chart.Patches.Count} patches, seed {form.Seed}, sheet {page} of {pages}"),
            "Inks: " + string.Join(", ", chart.InkNames), .. chart.Instructions, .. Cautions,
        ];
        List<string> lines = [];
        foreach (string sentence in sentences)
        {
            string line = "";
            foreach (string word in sentence.Split(' '))
            {
                if (line.Length > 0 && line.Length + 1 + word.Length > most)
                {
                    lines.Add(line);
                    line = "";
                }

                line += line.Length == 0 ? word : " " + word;
            }

            lines.Add(line);
        }

        return lines;
    }

    private static ChartPatch[] Shuffled(IReadOnlyList<ChartPatch> patches, int columns, int seed)
    {
        ChartChance chance = new(seed);
        int[] order = [.. Enumerable.Range(0, patches.Count)];
        for (int i = order.Length - 1; i > 0; i--)
            Exchange(order, i, chance.Below(i + 1));

        // A patch with an unwanted neighbour changes place with any that leaves both with fewer.
        for (int pass = 0; pass < 8; pass++)
        {
            for (int at = 0; at < order.Length; at++)
            {
                for (int tries = 0; tries < 40 && Clashes(order, at) > 0; tries++)
                {
                    int other = chance.Below(order.Length);
                    int before = Clashes(order, at) + Clashes(order, other);
                    Exchange(order, at, other);
                    if (Clashes(order, at) + Clashes(order, other) >= before)
                        Exchange(order, at, other);
                }
            }
        }

        return [.. order.Select(i => patches[i])];

        int Clashes(int[] places, int at)
        {
            int count = 0;
            foreach (int beside in (int[])[at % columns == 0 ? -1 : at - 1, (at + 1) % columns == 0 ? -1 : at + 1, at - columns, at
                + columns])
            {
                if (beside >= 0 && beside < places.Length && Clash(patches, places[at], places[beside]))
                    count++;
            }

            return count;
        }
    }

    private static bool Clash(IReadOnlyList<ChartPatch> patches, int one, int other)
    {
        if (Math.Abs(one - other) == 1)
            return true;
        double most = 0;
        for (int ink = 0; ink < patches[one].Inks.Count; ink++)
            most = Math.Max(most, Math.Abs(patches[one].Inks[ink] - patches[other].Inks[ink]));
        return most < 0.08;
    }

    private static void Exchange(int[] order, int one, int other) => (order[one], order[other]) = (order[other], order[one]);
}
