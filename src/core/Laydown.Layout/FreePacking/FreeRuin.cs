using Laydown.Layout.Packing;

namespace Laydown.Layout.FreePacking;

/// <summary>Takes pieces off a few sheets: neighbours of one of them, or all that lie on a sheet.</summary>
internal sealed class FreeRuin(FreeModel model, Chance chance)
{
    private const int MostSheets = 3;
    private const int LeastPieces = 2;
    private const int MostPieces = 15;

    /// <summary>Of a hundred sheets so many are bared whole.</summary>
    private const int WholePercent = 40;

    private bool[] marked = new bool[64];

    internal void Do(FreeState state)
    {
        int pieces = LeastPieces + chance.Below(MostPieces - LeastPieces + 1);
        int sheets = 1 + chance.Below(MostSheets);
        for (int i = 0; i < sheets; i++)
        {
            int slot = Some(state);
            if (slot < 0)
                return;

            int there = state[slot].Count;
            int count = chance.Below(100) < WholePercent ? there : Math.Min(there, Math.Max(1, pieces / sheets));
            if (count == there && model.Stocks > 1)
                state.Close(slot);
            else if (count > 0)
                Near(state, slot, count);
        }
    }

    private int Some(FreeState state)
    {
        int first = chance.Below(state.Slots);
        for (int i = 0; i < state.Slots; i++)
        {
            int slot = first + i < state.Slots ? first + i : first + i - state.Slots;
            if (state[slot].Stock >= 0)
                return slot;
        }

        return -1;
    }

    private void Near(FreeState state, int slot, int count)
    {
        ReadOnlySpan<Lying> spots = state[slot].Spots;
        if (marked.Length < spots.Length)
            marked = new bool[spots.Length * 2];
        marked.AsSpan(0, spots.Length).Fill(count == spots.Length);
        Bare middle = spots[chance.Below(spots.Length)].Place;
        for (int n = 0; n < count && count < spots.Length; n++)
            marked[Nearest(spots, middle)] = true;

        state.Remove(slot, marked);
    }

    private int Nearest(ReadOnlySpan<Lying> spots, in Bare middle)
    {
        (int nearest, long least) = (-1, long.MaxValue);
        for (int i = 0; i < spots.Length; i++)
        {
            if (marked[i])
                continue;

            Bare p = spots[i].Place;
            long far = (long)Math.Max(0, Math.Max(p.X - middle.Right, middle.X - p.Right)) + Math.Max(0, Math.Max(p.Y - middle.Top, middle.Y - p.Top));
            if (far < least)
                (nearest, least) = (i, far);
        }

        return nearest;
    }
}
