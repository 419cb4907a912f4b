namespace Laydown.Layout.Plates;

/// <summary>Cuts the steps of an answer once more and writes down every cut.</summary>
internal sealed class PlateWriter(PlateProblem problem, PlateCutter cutter)
{
    private readonly List<List<PlateColumn>> plates = [];
    private readonly List<PlateRow> rows = [];
    private readonly List<(int Left, int Right, PlateStep Step)> cells = [];
    private PlateState state = PlateCutter.Start;

    internal PlateLayout Write(IReadOnlyList<PlateStep> steps, long waste)
    {
        foreach (PlateStep step in steps)
        {
            (int width, int height) = Sides(step.Item, step.Turned);
            int above = step.Above < 0 ? 0 : Sides(step.Above, step.AboveTurned).Height;
            if (!cutter.Cut(in state, step.Where, width, height, above, step.AtTop, out PlateState after, out int left))
                throw new InvalidOperationException(Invariant($"Pane {step.Item} cannot be cut again where it was cut."));
            Close(step.Where);
            int begin = step.Where == PlateWhere.Row ? state.Next : after.Left;
            if (left > begin)
                cells.Add((begin, left, new(-1, -1, false, false, step.Where, false)));
            cells.Add((left, left + width, step));
            state = after;
        }

        Close(PlateWhere.NewPlate);
        return new([.. plates], waste);
    }

    private (int Width, int Height) Sides(int item, bool turned)
    {
        PlateItem pane = problem.Items[item];
        return turned ? (pane.Height, pane.Width) : (pane.Width, pane.Height);
    }

    private void Close(PlateWhere where)
    {
        if (where != PlateWhere.Row && cells.Count > 0)
        {
            rows.Add(new(state.Bottom, state.Top, [.. cells.Select(Cell)]));
            cells.Clear();
        }

        if (where is PlateWhere.Plate or PlateWhere.NewPlate && rows.Count > 0)
        {
            while (plates.Count <= state.Plate)
                plates.Add([]);
            plates[state.Plate].Add(new(state.Left, state.Right, [.. rows]));
            rows.Clear();
        }
    }

    private PlateCell Cell((int Left, int Right, PlateStep Step) cell)
    {
        PlateStep step = cell.Step;
        if (step.Item < 0)
            return new(cell.Left, cell.Right, []);

        (int width, int height) = Sides(step.Item, step.Turned);
        PlateSpot low = new(step.Item, new(cell.Left, step.AtTop ? state.Top - height : state.Bottom, width, height), step.Turned);
        return step.Above < 0
            ? new(cell.Left, cell.Right, [low])
            : new(cell.Left, cell.Right, [low, new(step.Above, new(cell.Left, low.Place.Top, width, Sides(step.Above, step.AboveTurned).Height), step.AboveTurned)]);
    }
}
