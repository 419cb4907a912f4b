using Laydown.Layout.Sheets;

namespace Laydown.Layout.Boards;

/// <summary>Numbers the copies of each piece from 1; numbers that locked copies bear are left out.</summary>
internal sealed class CopyNumbers
{
    private readonly int[] next;
    private readonly HashSet<(string Piece, int Copy)> taken = [];
    private readonly BoardFrame frame;

    internal CopyNumbers(BoardFrame frame)
    {
        this.frame = frame;
        next = new int[frame.Types.Count];
        foreach (SheetLayout? sheet in frame.Started)
            foreach (Placement p in sheet?.Placements.Where(p => p.Locked) ?? [])
                for (int r = 0; r < sheet!.Repeats; r++)
                    taken.Add((p.PieceId, p.Copy + r));
    }

    internal int Next(int piece)
    {
        do
            next[piece]++;
        while (taken.Contains((frame.Types[piece].Piece.Id, next[piece])));
        return next[piece];
    }

    /// <summary>The repeats of a sheet use up the numbers that follow.</summary>
    internal void Skip(int piece, int count)
    {
        for (int i = 0; i < count; i++)
            Next(piece);
    }
}
