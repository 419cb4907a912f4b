namespace Laydown.Layout.Jobs;

/// <summary>Pieces to be laid out, what there is to lay them on, and how they are cut apart.</summary>
/// <param name="Name">What it is, for people; may be null.</param>
/// <param name="Pieces">What is wanted; ids unique.</param>
/// <param name="Stocks">Boards and offcuts, or rolls; ids unique, not both kinds at once; none where there is a belt.</param>
/// <param name="Rules">Gap, tool, process.</param>
/// <param name="Belt">The belt, where the pieces are pre-cut blanks to be laid on it in lanes: then there are no stocks. Else null.</param>
public sealed record LayoutJob(string? Name, IReadOnlyList<JobPiece> Pieces, IReadOnlyList<JobStock> Stocks, JobRules Rules, JobBelt? Belt = null);
