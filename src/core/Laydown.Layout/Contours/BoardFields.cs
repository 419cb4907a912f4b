namespace Laydown.Layout.Contours;

/// <summary>Boards as the bays of one field, so that forms can move between them.</summary>
internal static class BoardFields
{
    /// <summary>One field for each worker.</summary>
    internal static IReadOnlyList<Field> Of(ContourJob job, IReadOnlyList<int> items, IReadOnlyList<BoardKind> boards, int count)
    {
        List<Form> standing = [];
        List<Pose> poses = [];
        for (int b = 0; b < boards.Count; b++)
        {
            for (int f = 0; f < boards[b].Fixed.Count; f++)
            {
                standing.Add(boards[b].Fixed[f]);
                poses.Add(boards[b].FixedPose(f, b));
            }
        }

        Form[] forms = [.. items.Select(job.FormOf)];
        return [.. Enumerable.Range(0, count).Select(_ => new Field(job.Tables, forms, standing, poses, [.. boards.Select(b => b.Box)]))];
    }

    /// <summary>Poses of a field as filled boards.</summary>
    internal static IReadOnlyList<FilledBoard> Filled(IReadOnlyList<BoardKind> boards, IReadOnlyList<int> items, Pose[] poses) =>
        [.. boards.Select((kind, b) => new FilledBoard(kind, [.. items.Select((item, i) => (item, poses[i])).Where(p => p.Item2.Bay == b)]))];
}
