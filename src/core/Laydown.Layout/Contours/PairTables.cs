namespace Laydown.Layout.Contours;

/// <summary>The loss of any two forms of a search: from tables where all angles are quarter turns and forms are few, else worked out each time.</summary>
internal sealed class PairTables
{
    private const int MostForms = 128;

    private readonly PairTable?[] tables;
    private readonly int forms, cells;

    internal PairTables(IReadOnlyList<Form> all)
    {
        forms = all.Count;
        bool useful = forms <= MostForms && all.All(f => f.Degrees.All(d => d % 90 == 0));
        tables = useful ? new PairTable?[forms * forms * 4] : [];
        cells = forms <= 30 ? 64 : forms <= 60 ? 48 : 32;
    }

    /// <summary>As <see cref="PairTest.Loss"/>.</summary>
    internal float Loss(Turned a, Turned b, float dx, float dy)
    {
        if (tables.Length == 0)
            return PairTest.Loss(a, b, dx, dy);
        if (a.Form.Index > b.Form.Index)
            (a, b, dx, dy) = (b, a, -dx, -dy);

        // Both are turned back until the first lies as drawn.
        (dx, dy) = a.Quarter switch { 0 => (dx, dy), 1 => (dy, -dx), 2 => (-dx, -dy), _ => (-dy, dx) };
        int at = (((a.Form.Index * forms) + b.Form.Index) * 4) + ((b.Quarter - a.Quarter) & 3);
        PairTable table = tables[at] ??= new(a.Form.AtQuarter(0), b.Form.AtQuarter((b.Quarter - a.Quarter) & 3), cells);
        return table.Loss(dx, dy);
    }
}
