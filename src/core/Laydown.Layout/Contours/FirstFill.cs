using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>Fills one board as it comes: large pieces first, each as far to the left as a few tries find.</summary>
internal static class FirstFill
{
    /// <summary>Copies of one piece that find no place one after the other before its others are left alone.</summary>
    private const int MostFailed = 6;

    /// <summary>The board filled, or null where nothing found a place.</summary>
    /// <param name="job">The problem.</param>
    /// <param name="kind">The board.</param>
    /// <param name="open">Items without a place, large ones first; of each piece no more are tried than the board's area takes.</param>
    /// <param name="chance">Chance.</param>
    /// <param name="stop">Ends the work.</param>
    internal static FilledBoard? Of(ContourJob job, BoardKind kind, IReadOnlyList<int> open, Chance chance, CancellationToken stop)
    {
        List<int> tried = Taken(job, kind, open);
        if (tried.Count == 0)
            return null;
        Field field = BoardFields.Of(job, tried, [kind], 1)[0];
        Placer placer = new(field, chance);
        for (int i = 0; i < tried.Count; i++)
            field.Lift(i);
        int tries = Math.Clamp(60_000 / tried.Count, 20, 600);
        int[] failed = new int[job.Forms.Count];
        List<(int, Pose)> placed = [];
        for (int i = 0; i < tried.Count && !stop.IsCancellationRequested; i++)
        {
            int piece = job.PieceOf(tried[i]);
            if (failed[piece] >= MostFailed || !placer.Fits(i))
                continue;
            if (placer.Leftmost(i, 0, tries) is { } pose)
            {
                field.Put(i, pose);
                placed.Add((tried[i], pose));
                failed[piece] = 0;
            }
            else
            {
                failed[piece]++;
            }
        }

        return placed.Count > 0 ? new(kind, placed) : null;
    }

    // As many of a piece as its area goes into the board's, and one: more need not be looked at.
    private static List<int> Taken(ContourJob job, BoardKind kind, IReadOnlyList<int> open)
    {
        int[] most = [.. job.Forms.Select(f => f.DrawnArea > 0 ? (int)Math.Min(int.MaxValue - 1, kind.UsableArea / f.DrawnArea) + 1 : int.MaxValue)];
        return [.. open.Where(i => most[job.PieceOf(i)]-- > 0)];
    }
}
