namespace Laydown.Layout.Plates;

/// <summary>One pass of a beam over partial plates, pane by pane: of the states with equally many panes the best by a guide are kept.</summary>
/// <remarks>
/// Branching cell by cell, guides of waste over the mean size of panes, and leaving out what another state with the same panes outdoes but for
/// defects, after [LibralessoFontan2020]; the beam of states with equally many panes is ours. Not for several threads.
/// </remarks>
internal sealed class PlateBeam(PlateProblem problem, double offset, double power)
{
    private readonly PlateCutter cutter = new(problem);
    private readonly PlateStacks stacks = new(problem.Items);
    private readonly PlateLevel[] levels = [new(), new(), new()];
    private readonly List<(int Parent, PlateStep Step)[]> trace = [];
    private readonly PlateFronts fronts = new();
    private short[][] places = [[], [], []];
    private PlateState[] kept = [];
    private bool fitsRow;
    private bool fitsColumn;
    private int parent;
    private long mostWaste;
    private PlateStep[]? best;

    internal PlateCutter Cutter => cutter;

    internal PlateStacks Stacks => stacks;

    /// <summary>Waste of the best whole answer of the last pass.</summary>
    internal long Waste => mostWaste;

    /// <summary>Whether the last pass threw no state away for want of room: a wider one would find the same.</summary>
    internal bool Whole { get; private set; }

    /// <summary>Goes once over all panes; the cells cut, or null where no answer has less waste than wanted or the stop came.</summary>
    /// <param name="width">States kept of each number of panes.</param>
    /// <param name="lessThan">Waste to undercut.</param>
    /// <param name="stop">Ends the pass.</param>
    internal PlateStep[]? Pass(int width, long lessThan, CancellationToken stop)
    {
        (mostWaste, best) = (lessThan, null);
        trace.Clear();
        foreach (PlateLevel level in levels)
            level.Clear(width);
        Whole = true;
        levels[0].Add(PlateCutter.Start, 0);
        for (int count = 0; count < problem.Items.Count; count++)
        {
            PlateLevel level = levels[count % 3];
            int many = Select(level, count, width);
            for (int i = 0; i < many; i++)
            {
                if (i % 64 == 0 && stop.IsCancellationRequested)
                    return null;
                Expand(i, count);
            }

            level.Clear(width);
        }

        return best;
    }

    // Sorted by guide; a state is left out where a better one with the same panes has cut no further anywhere.
    private int Select(PlateLevel level, int count, int width)
    {
        level.Sort();
        int many = 0, size = stacks.Stacks.Length, most = Math.Min(width, level.Count);
        fronts.Clear(most);
        if (kept.Length < most)
            kept = new PlateState[Math.Max(most, 2 * kept.Length)];
        if (places[count % 3].Length < most * size)
            places[count % 3] = new short[Math.Max(most * size, 2 * places[count % 3].Length)];
        short[] here = places[count % 3];
        for (int i = 0; i < level.Count && many < width; i++)
        {
            ref readonly PlateState state = ref level[i];
            if (cutter.Front(in state) - state.Area >= mostWaste || !fronts.Add(in state, kept, many))
                continue;
            kept[many] = state;
            Span<short> its = here.AsSpan(many * size, size);
            if (state.Parent < 0)
                its.Clear();
            else
                places[(count + 3 - (state.Step.Above < 0 ? 1 : 2)) % 3].AsSpan(state.Parent * size, size).CopyTo(its);
            if (state.Parent >= 0)
                its[stacks.StackOf[state.Step.Item]]++;
            if (state.Step.Above >= 0 && state.Parent >= 0)
                its[stacks.StackOf[state.Step.Above]]++;
            many++;
        }

        Whole &= !level.Culled && many < width;
        trace.Add([.. kept.Take(many).Select(s => (s.Parent, s.Step))]);
        return many;
    }

    private void Expand(int index, int count)
    {
        int size = stacks.Stacks.Length;
        ReadOnlySpan<short> its = places[count % 3].AsSpan(index * size, size);
        (parent, fitsRow, fitsColumn) = (index, false, false);
        int made = Children(in kept[index], its, PlateWhere.Row);
        if (!fitsRow)
            made += Children(in kept[index], its, PlateWhere.Column);
        if (!fitsRow && !fitsColumn && Children(in kept[index], its, PlateWhere.Plate) == 0)
            Children(in kept[index], its, PlateWhere.NewPlate);
    }

    private int Children(in PlateState state, ReadOnlySpan<short> its, PlateWhere where)
    {
        int made = 0;
        for (int s = 0; s < its.Length; s++)
        {
            int[] stack = stacks.Stacks[s];
            if (its[s] >= stack.Length || stacks.Waits(s, its))
                continue;
            int item = stack[its[s]];
            made += Single(in state, item, false, where);
            if (stacks.Width[item] != stacks.Height[item])
                made += Single(in state, item, true, where);
            foreach (int above in stacks.Partners[item])
                if (IsNext(above, s, its))
                    made += Pair(in state, item, above, where);
        }

        return made;
    }

    // Once a pane of the stack below is taken.
    private bool IsNext(int above, int below, ReadOnlySpan<short> its)
    {
        int stack = stacks.StackOf[above], place = its[stack] + (stack == below ? 1 : 0);
        return stacks.PlaceOf[above] == place && (place > 0 || stacks.Before[stack] < 0 || stacks.Before[stack] == below || its[stacks.Before[stack]] > 0);
    }

    private int Single(in PlateState state, int item, bool turned, PlateWhere where)
    {
        (int w, int h) = turned ? (stacks.Height[item], stacks.Width[item]) : (stacks.Width[item], stacks.Height[item]);
        PlateStep step = new(item, -1, turned, false, where, false);
        bool cut = cutter.Cut(in state, where, w, h, 0, false, out PlateState after, out int left);
        if (cut)
            Take(in state, ref after, step);
        int next = where == PlateWhere.Row ? state.Next : where == PlateWhere.Column ? state.Left : where == PlateWhere.Plate ? state.Right : 0;
        if (cut && left == next)
            return 1;

        // A defect is in the way: the pane may also lie above it.
        if (!cutter.Cut(in state, where, w, h, 0, true, out after, out _))
            return cut ? 1 : 0;
        Take(in state, ref after, step with { AtTop = true });
        return 1;
    }

    private int Pair(in PlateState state, int item, int above, PlateWhere where)
    {
        int made = 0;
        for (int turn = 0; turn < 4; turn++)
        {
            bool turned = (turn & 1) != 0, aboveTurned = (turn & 2) != 0;
            (int w, int h) = turned ? (stacks.Height[item], stacks.Width[item]) : (stacks.Width[item], stacks.Height[item]);
            (int w2, int h2) = aboveTurned ? (stacks.Height[above], stacks.Width[above]) : (stacks.Width[above], stacks.Height[above]);
            if (w != w2 || (turned && w == h) || (aboveTurned && w2 == h2) || !cutter.Cut(in state, where, w, h, h2, false, out PlateState after, out _))
                continue;
            Take(in state, ref after, new(item, above, turned, aboveTurned, where, false));
            made++;
        }

        return made;
    }

    private void Take(in PlateState state, ref PlateState after, PlateStep step)
    {
        fitsRow |= step.Where == PlateWhere.Row && after.Right == state.Right && after.Top == state.Top;
        fitsColumn |= step.Where == PlateWhere.Column && after.Right == state.Right;
        (after.Parent, after.Step) = (parent, step);
        after.Area += stacks.Area[step.Item] + (step.Above < 0 ? 0 : stacks.Area[step.Above]);
        after.Mark += stacks.Marks[step.Item] + (step.Above < 0 ? 0 : stacks.Marks[step.Above]);
        after.Count += step.Above < 0 ? 1 : 2;
        long front = cutter.Front(in after), waste = front - after.Area;
        if (waste >= mostWaste)
            return;
        if (after.Count < problem.Items.Count)
        {
            levels[after.Count % 3].Add(in after, Guide(waste, front, after.Area, after.Count));
            return;
        }

        waste = cutter.Used(in after) - after.Area;
        if (waste < mostWaste)
            (mostWaste, best) = (waste, Steps(in after));
    }

    private float Guide(long waste, long front, long area, int count) =>
        (float)((offset + ((double)waste / front)) * Math.Pow((double)count / area * problem.Width * problem.Height, power));

    private PlateStep[] Steps(in PlateState last)
    {
        List<PlateStep> steps = [last.Step];
        int at = last.Parent, count = last.Count - (last.Step.Above < 0 ? 1 : 2);
        while (count > 0)
        {
            (int before, PlateStep step) = trace[count][at];
            steps.Add(step);
            count -= step.Above < 0 ? 1 : 2;
            at = before;
        }

        steps.Reverse();
        return [.. steps];
    }
}
