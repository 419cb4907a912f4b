namespace Laydown.Layout.FreePacking;

/// <summary>Pieces that want to share sheets.</summary>
internal static class FreeGroups
{
    /// <summary>Over all groups: sheets that carry pieces of it, less one.</summary>
    internal static int Apart(FreeModel model, IReadOnlyList<FreeSheet> sheets)
    {
        List<(int Group, int Sheets)> carried = [.. sheets.SelectMany(s => GroupsOn(model, s.Board).Select(g => (g, s.Repeats)))];
        return carried.Sum(c => c.Sheets) - carried.Select(c => c.Group).Distinct().Count();
    }

    private static IEnumerable<int> GroupsOn(FreeModel model, FreeBoard board) =>
        board.Spots.ToArray().Select(s => model.Problem.Pieces[s.Type].Group).Where(g => g >= 0).Distinct();
}
