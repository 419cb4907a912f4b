namespace Laydown.Layout.FreePacking;

/// <summary>Where the search starts: the sheets it may change, and those it leaves as they are because there are too many pieces.</summary>
internal sealed class FreeStart
{
    /// <summary>So many copies at most are searched over; of more, the fullest sheets stay.</summary>
    private const int MostPieces = 3000;

    /// <summary>So many copies without a place at most are tried again; more than that are left out for good.</summary>
    private const int MostMissing = 300;

    internal FreeStart(FreeModel model, FreeLayout layout)
    {
        (List<FreeSheet> open, List<FreeSheet> kept) = ([], []);
        int pieces = 0;
        foreach (FreeSheet sheet in layout.Sheets.OrderBy(s => (double)s.Board.Used / model.BareArea[s.Board.Stock]))
        {
            int count = Math.Max(1, sheet.Board.Count), room = Math.Max(0, MostPieces - pieces) / count;
            int repeats = Math.Min(sheet.Repeats, open.Count == 0 ? Math.Max(1, room) : room);
            pieces += repeats * count;
            if (repeats > 0)
                open.Add(sheet with { Repeats = repeats });
            if (repeats < sheet.Repeats)
                kept.Add(sheet with { Repeats = sheet.Repeats - repeats });
        }

        Kept = kept;
        Available = [.. model.StockCopies];
        foreach (FreeSheet sheet in kept)
            Available[sheet.Board.Stock] -= sheet.Repeats;
        Left = [.. model.Hopeless];
        State = Open(model, layout, open, pieces);
        KeptCost = layout.Cost - State.Cost;
    }

    /// <summary>Sheets that stay.</summary>
    internal IReadOnlyList<FreeSheet> Kept { get; }

    /// <summary>Their cost.</summary>
    internal double KeptCost { get; }

    /// <summary>Copies of each stock there are for the search.</summary>
    internal int[] Available { get; }

    /// <summary>The layout it starts from.</summary>
    internal FreeState State { get; }

    /// <summary>Copies left out for good, by piece.</summary>
    private int[] Left { get; }

    /// <summary>A state of the search with the sheets that stay, as a layout: equal sheets as repeats.</summary>
    internal FreeLayout Layout(FreeModel model, FreeState state)
    {
        List<FreeSheet> sheets = [.. Kept];
        Dictionary<string, int> at = new(StringComparer.Ordinal);
        for (int i = 0; i < sheets.Count; i++)
            at.TryAdd(Picture(sheets[i].Board), i);
        for (int slot = 0; slot < state.Slots; slot++)
        {
            if (state[slot].Stock < 0 || state[slot].Count == 0)
                continue;

            string picture = Picture(state[slot]);
            if (at.TryGetValue(picture, out int found))
            {
                sheets[found] = sheets[found] with { Repeats = sheets[found].Repeats + 1 };
                continue;
            }

            FreeBoard copy = new();
            copy.CopyFrom(state[slot]);
            at[picture] = sheets.Count;
            sheets.Add(new(copy, 1));
        }

        int[] left = [.. Left];
        for (int i = 0; i < state.OutCount; i++)
            left[state.Out[i]]++;
        return new(model, sheets, left);
    }

    private static string Picture(FreeBoard board) => Invariant($"{board.Stock}:") + string.Join(
        ';', board.Spots.ToArray().Select(s => (s.Type, s.Place.X, s.Place.Y, s.Turned)).Order().Select(s => Invariant($"{s.Type},{s.X},{s.Y},{s.Turned}")));

    private FreeState Open(FreeModel model, FreeLayout layout, List<FreeSheet> open, int pieces)
    {
        FreeState state = new(model, pieces + MostMissing, open.Sum(s => s.Repeats) + 1);
        foreach (FreeSheet sheet in open)
            for (int i = 0; i < sheet.Repeats; i++)
            {
                int slot = state.Open(sheet.Board.Stock);
                foreach (Lying spot in sheet.Board.Spots)
                    state.Add(slot, spot);
            }

        for (int t = 0; t < model.Types; t++)
            for (int i = model.Hopeless[t]; i < layout.Left[t]; i++)
            {
                if (state.OutCount < MostMissing)
                    state.TakeOut(t);
                else
                    Left[t]++;
            }

        return state;
    }
}
