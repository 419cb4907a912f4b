using Laydown.Layout.Packing;

namespace Laydown.Layout.Plates;

/// <summary>Cuts one more cell under all rules: where it comes to lie, and the least places of the cuts around it.</summary>
internal sealed class PlateCutter
{
    private readonly Box[][] defects;
    private readonly PlateRules rules;

    internal PlateCutter(PlateProblem problem)
    {
        (Width, Height, rules) = (problem.Width, problem.Height, problem.Rules);
        defects = [.. problem.Defects.Select(d => d.OrderBy(b => b.X).ThenBy(b => b.Y).ToArray())];
    }

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>The state before the first plate.</summary>
    internal static PlateState Start => new() { Plate = -1, Parent = -1 };

    /// <summary>Cuts a cell of a width that holds a pane of a height, and perhaps another on top of it.</summary>
    /// <param name="before">How far cutting has come.</param>
    /// <param name="where">Which row the cell goes to.</param>
    /// <param name="width">Width of the panes.</param>
    /// <param name="height">Height of the lower pane.</param>
    /// <param name="above">Height of the upper pane, or 0.</param>
    /// <param name="atTop">Whether the pane lies at the top of the cell, over a defect.</param>
    /// <param name="after">How far cutting then has come.</param>
    /// <param name="left">Left side of the panes.</param>
    /// <returns>Whether it can be cut.</returns>
    internal bool Cut(in PlateState before, PlateWhere where, int width, int height, int above, bool atTop, out PlateState after, out int left)
    {
        after = before;
        left = 0;
        if (!Open(ref after, where))
            return false;
        Box[] here = after.Plate < defects.Length ? defects[after.Plate] : [];
        int x = after.Next, content = after.Bottom + height + above;
        if (content > Height || !(atTop ? x + width <= after.MostRight : Shift(in after, here, width, content, ref x)))
            return false;

        // The right cut of the column, then the upper cut of the row, which goes across the whole column.
        int end = x + width, right = RightCut(in after, here, end);
        if (right < 0)
            return false;
        int mostTop = Math.Min(after.MostTop, MostTop(here, end, after.Bottom));
        if (x > after.Next)
            mostTop = Math.Min(mostTop, MostTop(here, x, after.Bottom));
        int top = atTop ? TopCutUnder(in after, here, x, end, height, right) : TopCut(in after, here, content, above > 0, right);
        if (top < 0 || top > mostTop)
            return false;

        after.TouchRight = right == end || (right == after.RightOfRows && after.RowsTouchRight);
        after.TouchTop = top == content || (top == after.Top && after.TouchTop);
        after.TopFixed |= above > 0 || atTop;
        (after.Right, after.Top, after.MostTop, after.Next, left) = (right, top, mostTop, end, x);
        return true;
    }

    /// <summary>Area that is cut up to here.</summary>
    internal long Front(in PlateState state) => state.Plate < 0 ? 0
        : ((((long)state.Plate * Width) + state.Left) * Height) + ((long)(state.Right - state.Left) * state.Bottom) + ((long)(state.Next - state.Left) * (state.Top - state.Bottom));

    /// <summary>Area that is cut where nothing follows.</summary>
    internal long Used(in PlateState state) => (((long)state.Plate * Width) + state.Right) * Height;

    private bool Open(ref PlateState s, PlateWhere where)
    {
        if (where == PlateWhere.Row)
            return s.Plate >= 0;
        if (where == PlateWhere.Column)
        {
            if (s.Plate < 0 || s.Top >= Height)
                return false;
            s.MostRight = MostRight(in s);
            (s.RightOfRows, s.RowsTouchRight, s.Bottom) = (s.Right, s.TouchRight, s.Top);
        }
        else
        {
            if (where == PlateWhere.Plate && (s.Plate < 0 || s.Right >= Width))
                return false;
            s.Left = where == PlateWhere.Plate ? s.Right : 0;
            s.Plate += where == PlateWhere.NewPlate ? 1 : 0;
            (s.RightOfRows, s.Right, s.RowsTouchRight, s.TouchRight, s.Bottom, s.Top) = (s.Left, s.Left, false, false, 0, 0);
            s.MostRight = (int)Math.Min(Width, (long)s.Left + rules.MostColumn);
        }

        (s.Next, s.MostTop, s.TouchTop, s.TopFixed) = (s.Left, Height, false, false);
        return true;
    }

    // The row's upper cut is now where it stays: the column may not grow so wide that this cut meets a defect.
    private int MostRight(in PlateState s)
    {
        int most = s.MostRight;
        if (s.Plate < defects.Length)
            foreach (Box d in defects[s.Plate])
                if (d.Y < s.Top && s.Top < d.Top && d.X >= s.Right)
                    most = Math.Min(most, d.X);
        return most;
    }

    // Goes right until neither the panes nor the cuts beside them meet a defect; what is left of them is then waste.
    private bool Shift(in PlateState s, Box[] here, int width, int content, ref int x)
    {
        for (bool clear = false; !clear;)
        {
            if (x + width > s.MostRight)
                return false;
            clear = true;
            foreach (Box d in here)
            {
                if (d.Top <= s.Bottom || d.Y >= content || d.X >= x + width || d.Right <= x)
                    continue;
                x = Math.Max(d.Right, s.Next + rules.LeastWaste);
                clear = false;
                break;
            }
        }

        return true;
    }

    private int RightCut(in PlateState s, Box[] here, int end)
    {
        int right = Math.Max(s.RightOfRows, end), waste = rules.LeastWaste;
        for (; right <= s.MostRight;)
        {
            int wanted = right;
            if (right - s.Left < rules.LeastColumn)
                wanted = s.Left + rules.LeastColumn;
            else if (right != s.RightOfRows && s.RowsTouchRight && right < s.RightOfRows + waste)
                wanted = s.RightOfRows + waste;
            else if (right != end && right < end + waste)
                wanted = end + waste;
            else if (right != Width && right > Width - waste)
                wanted = Width;
            else
                foreach (Box d in here)
                    if (d.X < right && right < d.Right)
                        wanted = Math.Max(wanted, d.Right);
            if (wanted == right)
                return right;
            right = wanted;
        }

        return -1;
    }

    private int TopCut(in PlateState s, Box[] here, int content, bool exact, int right)
    {
        int top = Math.Max(s.Top, content), waste = rules.LeastWaste;
        for (; top <= Height;)
        {
            int wanted = top;
            if (exact && top != content)
                return -1;
            if (top - s.Bottom < rules.LeastRow)
                wanted = s.Bottom + rules.LeastRow;
            else if (top != s.Top && s.TopFixed)
                return -1;
            else if (top != s.Top && s.TouchTop && top < s.Top + waste)
                wanted = s.Top + waste;
            else if (top != content && top < content + waste)
                wanted = content + waste;
            else
                wanted = Clear(here, s.Left, right, top);
            if (wanted == top)
                return top;
            top = wanted;
        }

        return -1;
    }

    private int TopCutUnder(in PlateState s, Box[] here, int x, int end, int height, int right)
    {
        int top = Math.Max(s.Top, s.Bottom + rules.LeastWaste + height), waste = rules.LeastWaste;
        for (; top <= Height;)
        {
            int wanted = top;
            if (top - s.Bottom < rules.LeastRow)
                wanted = s.Bottom + rules.LeastRow;
            else if (top != s.Top && s.TopFixed)
                return -1;
            else if (top != s.Top && s.TouchTop && top < s.Top + waste)
                wanted = s.Top + waste;
            else
                wanted = Clear(here, s.Left, right, top);
            if (wanted == top)
                foreach (Box d in here)
                    if (d.X < end && x < d.Right && d.Y < top && top - height < d.Top)
                        wanted = Math.Max(wanted, d.Top + height);
            if (wanted == top)
                return top;
            top = wanted;
        }

        return -1;
    }

    // A cut across meets no defect, and leaves no waste too low under the plate's upper side.
    private int Clear(Box[] here, int left, int right, int top)
    {
        if (top != Height && top > Height - rules.LeastWaste)
            return Height;
        foreach (Box d in here)
            if (d.Y < top && top < d.Top && d.X < right && left < d.Right)
                return d.Top;
        return top;
    }

    private int MostTop(Box[] here, int x, int bottom)
    {
        int most = Height;
        foreach (Box d in here)
            if (d.X < x && x < d.Right && d.Top > bottom)
                most = Math.Min(most, Math.Max(d.Y, bottom));
        return most;
    }
}
