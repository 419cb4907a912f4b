using Laydown.Layout.Boards;

namespace Laydown.Layout.Jobs;

/// <summary>What is to be known of the layout of a job that keeps its rules: how sets and due dates came to lie, and what is made beyond what was asked for.</summary>
public static class JobNotes
{
    /// <summary>Sets and due dates over boards, counted from where the pieces lie; empty where none is named.</summary>
    public static IReadOnlyList<SetSpread> Spreads(JobLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Dictionary<string, string?> sets = layout.Job.Pieces.ToDictionary(p => p.Id, SetOf, StringComparer.Ordinal);
        if (sets.Values.All(s => s is null))
            return [];
        JobShapes shapes = new(layout.Job);
        return Together.Spreads(
            [.. layout.Sheets.Select(s => new SetSheet([.. s.Spots.Select(p => (p.PieceId, shapes.Piece(p.PieceId).AreaMm2))], s.Size.AreaM2 * 1e6, s.Repeats))],
            id => sets.GetValueOrDefault(id));
    }

    /// <summary>Sentences: sets that are not kept together, pieces of which more are made than asked for; empty where there is nothing to say.</summary>
    public static IReadOnlyList<string> Of(JobLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        Dictionary<string, long> made = new(StringComparer.Ordinal);
        foreach (JobSheet sheet in layout.Sheets)
            foreach (JobSpot spot in sheet.Spots)
                made[spot.PieceId] = made.GetValueOrDefault(spot.PieceId) + sheet.Repeats;
        return
        [
            .. Spreads(layout).Where(s => s.IsApart).Select(s => s.ToString()),
            .. layout.Job.Pieces.Where(p => made.GetValueOrDefault(p.Id) > p.Quantity)
                .Select(p => Invariant($"{p.Id}: {p.Quantity} asked for, {made[p.Id]} made, {made[p.Id] - p.Quantity} more than asked for.")),
        ];
    }

    private static string? SetOf(JobPiece piece) => piece.KeepWith ?? (piece.Due is { } due ? Invariant($"due {due:yyyy-MM-dd}") : null);
}
