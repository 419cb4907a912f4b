namespace Laydown.Layout.Panels;

/// <summary>What a seam costs along one axis, wherever it lies, in one look-up.</summary>
internal sealed class SeamProfile
{
    private readonly int length;
    private readonly long[] costUpTo;
    private readonly int[] barredUpTo;
    private readonly bool[]? wanted;
    private readonly bool onlyWanted;
    private readonly long elsewhere;

    /// <summary>A profile.</summary>
    /// <param name="cost">Cost of each step of the axis, 0 or more; negative where no seam may run.</param>
    /// <param name="wantedMiddles">Doubled middles (previous end + next start) that are wanted places, from 0 to twice the length; null where nothing is wanted.</param>
    /// <param name="onlyWanted">Whether seams may lie at wanted places alone.</param>
    /// <param name="elsewhere">Cost of a seam elsewhere.</param>
    internal SeamProfile(ReadOnlySpan<int> cost, bool[]? wantedMiddles, bool onlyWanted, long elsewhere)
    {
        length = cost.Length;
        (wanted, this.onlyWanted, this.elsewhere) = (wantedMiddles, onlyWanted, elsewhere);
        costUpTo = new long[length + 1];
        barredUpTo = new int[length + 1];
        for (int i = 0; i < length; i++)
        {
            costUpTo[i + 1] = costUpTo[i] + Math.Max(0, cost[i]);
            barredUpTo[i + 1] = barredUpTo[i] + (cost[i] < 0 ? 1 : 0);
        }
    }

    /// <summary>Cost of a seam between a panel that ends at <paramref name="end"/> and the next, which starts at <paramref name="start"/>; −1 where there must be none.</summary>
    /// <remarks>It is the sum over the steps between the two and one step on each side: a butt joint costs the two steps that meet.</remarks>
    internal long Of(int end, int start)
    {
        int from = Math.Max(0, Math.Min(end, start) - 1), to = Math.Min(length, Math.Max(end, start) + 1);
        if (barredUpTo[to] > barredUpTo[from])
            return -1;
        long cost = costUpTo[to] - costUpTo[from];
        return wanted is null || wanted[end + start] ? cost : onlyWanted ? -1 : cost + elsewhere;
    }
}
