using Laydown.Instances.Rectangles;
using NetTopologySuite.Geometries;

namespace Laydown.Instances.Plates;

/// <summary>Judges cut plates on its own, cut by cut, with nothing of the code that made them.</summary>
/// <remarks>
/// Rules of [ROADEF2018]: columns, rows, cells, and one more cut in a cell; least and greatest widths; waste never thinner than its least;
/// no defect in a pane, no cut through a defect; panes of a stack come in the order of the file; plates are taken in order.
/// </remarks>
public static class PlateChecker
{
    /// <summary>What is wrong, in words; empty where nothing is.</summary>
    public static IReadOnlyList<string> Faults(RectInstance instance, IReadOnlyList<IReadOnlyList<CutColumn>> plates, PlateAsk ask)
    {
        ArgumentNullException.ThrowIfNull(instance);
        ArgumentNullException.ThrowIfNull(plates);
        ArgumentNullException.ThrowIfNull(ask);
        return
        [
            .. plates.SelectMany((p, i) => OfPlate(instance, p, i, ask).Select(f => FormattableString.Invariant($"plate {i + 1}: {f}"))),
            .. OfOrder(instance, [.. plates.SelectMany(p => p.SelectMany(c => c.Rows.SelectMany(r => r.Cells.SelectMany(l => l.Placed.Select(s => s.Item)))))]),
        ];
    }

    /// <summary>Area cut less area of the panes: plates whole, the last one up to the last column.</summary>
    public static long Waste(RectInstance instance, IReadOnlyList<IReadOnlyList<CutColumn>> plates)
    {
        ArgumentNullException.ThrowIfNull(instance);
        ArgumentNullException.ThrowIfNull(plates);
        RectBin plate = instance.Bins[0];
        return ((plates.Count - 1) * plate.Area) + ((long)plates[^1][^1].Right * plate.Height) - instance.ItemArea;
    }

    private static IEnumerable<string> OfPlate(RectInstance instance, IReadOnlyList<CutColumn> columns, int plate, PlateAsk ask)
    {
        if (columns.Count == 0 || plate >= instance.Bins.Count)
        {
            yield return "nothing is cut from it, or there is no such plate";
            yield break;
        }

        RectBin bin = instance.Bins[plate];
        Envelope[] defects = [.. instance.Defects.Where(d => d.Bin == plate).Select(d => new Envelope(d.X, d.X + d.Width, d.Y, d.Y + d.Height))];
        int at = 0;
        foreach (CutColumn column in columns)
        {
            if (column.Left != at || column.Right > bin.Width)
                yield return FormattableString.Invariant($"a column from {column.Left} to {column.Right}, wanted from {at} within {bin.Width}");
            if (column.Right - column.Left < ask.LeastColumn || column.Right - column.Left > ask.MostColumn)
                yield return FormattableString.Invariant($"a column {column.Right - column.Left} wide");
            if (column.Right < bin.Width && Meets(defects, column.Right, column.Right, 0, bin.Height))
                yield return FormattableString.Invariant($"the cut at {column.Right} goes through a defect");
            foreach (string fault in OfColumn(instance, column, bin.Height, defects, ask))
                yield return fault;
            at = column.Right;
        }

        if (bin.Width - at is int rest && rest != 0 && rest < ask.LeastWaste)
            yield return FormattableString.Invariant($"{rest} of waste at the right");
    }

    private static IEnumerable<string> OfColumn(RectInstance instance, CutColumn column, int height, Envelope[] defects, PlateAsk ask)
    {
        int at = 0;
        foreach (CutRow row in column.Rows)
        {
            if (row.Bottom != at || row.Top > height || row.Top - row.Bottom < ask.LeastRow)
                yield return FormattableString.Invariant($"a row from {row.Bottom} to {row.Top}, wanted from {at}");
            if (row.Top < height && Meets(defects, column.Left, column.Right, row.Top, row.Top))
                yield return FormattableString.Invariant($"the cut across at {row.Top} goes through a defect");
            foreach (string fault in OfRow(instance, column, row, defects, ask))
                yield return fault;
            at = row.Top;
        }

        if (height - at is int rest && rest != 0 && rest < ask.LeastWaste)
            yield return FormattableString.Invariant($"{rest} of waste over the last row");
    }

    private static IEnumerable<string> OfRow(RectInstance instance, CutColumn column, CutRow row, Envelope[] defects, PlateAsk ask)
    {
        int at = column.Left;
        foreach (CutCell cell in row.Cells)
        {
            if (cell.Left != at || cell.Right > column.Right || cell.Right <= cell.Left)
                yield return FormattableString.Invariant($"a cell from {cell.Left} to {cell.Right}, wanted from {at} within {column.Right}");
            if (cell.Right < column.Right && Meets(defects, cell.Right, cell.Right, row.Bottom, row.Top))
                yield return FormattableString.Invariant($"the third cut at {cell.Right} goes through a defect");
            if (cell.Placed.Count == 0 && cell.Right - cell.Left < ask.LeastWaste)
                yield return FormattableString.Invariant($"{cell.Right - cell.Left} of waste between panes");
            foreach (string fault in cell.Placed.SelectMany(p => OfPane(instance, cell, p, defects)).Concat(OfCell(row, cell, defects, ask)))
                yield return fault;
            at = cell.Right;
        }

        if (column.Right - at is int rest && rest != 0 && rest < ask.LeastWaste)
            yield return FormattableString.Invariant($"{rest} of waste at the end of a row");
    }

    private static IEnumerable<string> OfPane(RectInstance instance, CutCell cell, PlacedRect pane, Envelope[] defects)
    {
        RectItem item = instance.Items[pane.Item];
        if (!((pane.Width == item.Width && pane.Height == item.Height) || (pane.Width == item.Height && pane.Height == item.Width)))
            yield return FormattableString.Invariant($"pane {pane.Item} has another size");
        if (pane.X != cell.Left || pane.X + pane.Width != cell.Right)
            yield return FormattableString.Invariant($"pane {pane.Item} is not as wide as its cell");
        if (Meets(defects, pane.X, pane.X + pane.Width, pane.Y, pane.Y + pane.Height))
            yield return FormattableString.Invariant($"pane {pane.Item} holds a defect");
    }

    // One cut: a pane with waste on one side, or two panes without any.
    private static IEnumerable<string> OfCell(CutRow row, CutCell cell, Envelope[] defects, PlateAsk ask)
    {
        List<int> sides = [row.Bottom];
        foreach (PlacedRect pane in cell.Placed)
            sides.AddRange([pane.Y, pane.Y + pane.Height]);
        sides.Add(row.Top);
        int cuts = sides.Skip(1).SkipLast(1).Where(y => y != row.Bottom && y != row.Top).Distinct().Count();
        if (cuts > 1)
            yield return FormattableString.Invariant($"{cuts} cuts in the cell at {cell.Left}");
        for (int i = 1; i < sides.Count; i++)
        {
            bool waste = i % 2 == 1 && cell.Placed.Count > 0;
            if (sides[i] < sides[i - 1])
                yield return FormattableString.Invariant($"panes overlap or leave their row in the cell at {cell.Left}");
            if (waste && sides[i] - sides[i - 1] is int rest && rest > 0 && rest < ask.LeastWaste)
                yield return FormattableString.Invariant($"{rest} of waste in the cell at {cell.Left}");
            if (sides[i] != row.Bottom && sides[i] != row.Top && Meets(defects, cell.Left, cell.Right, sides[i], sides[i]))
                yield return FormattableString.Invariant($"the cut at {sides[i]} in the cell at {cell.Left} goes through a defect");
        }
    }

    private static IEnumerable<string> OfOrder(RectInstance instance, IReadOnlyList<int> cut)
    {
        for (int i = 0; i < instance.Items.Count; i++)
            if (cut.Count(c => c == i) is int times && times != instance.Items[i].Copies)
                yield return FormattableString.Invariant($"pane {i} is cut {times} times");
        foreach (IGrouping<int, int> stack in cut.GroupBy(c => instance.Items[c].Stack))
            if (!stack.SequenceEqual(stack.Order()))
                yield return FormattableString.Invariant($"stack {stack.Key} is cut out of order");
    }

    // Insides meet; a line meets where it passes through the inside. Sides may touch.
    private static bool Meets(Envelope[] defects, int left, int right, int bottom, int top) =>
        defects.Any(d => d.MinX < right && left < d.MaxX && d.MinY < top && bottom < d.MaxY);
}
