namespace Laydown.Instances.Panels;

/// <summary>One axis to be parted in panels: lengths in whole steps.</summary>
/// <param name="Length">Length to be covered.</param>
/// <param name="Most">Longest panel.</param>
/// <param name="Least">Shortest panel; at least two overlaps.</param>
/// <param name="OverlapLeast">Least overlap; below 0 for a gap.</param>
/// <param name="OverlapMost">Most overlap.</param>
/// <param name="Kind">How long panels are to be: 0 equal to one step, 1 free, 2 full and a rest, 3 given.</param>
/// <param name="Given">Lengths that are given, for kind 3.</param>
/// <param name="Cost">Cost of a seam in each step; below 0 where there must be none.</param>
/// <param name="Wanted">Places seams should lie at; empty for none.</param>
/// <param name="Slack">How far the middle of a seam may lie from one.</param>
/// <param name="OnlyWanted">Whether seams may lie nowhere else.</param>
/// <param name="Elsewhere">What a seam elsewhere costs.</param>
public sealed record PanelInstance(
    int Length, int Most, int Least, int OverlapLeast, int OverlapMost, int Kind, IReadOnlyList<int> Given, IReadOnlyList<int> Cost,
    IReadOnlyList<int> Wanted, int Slack, bool OnlyWanted, long Elsewhere)
{
    /// <summary>Cost of a seam, told in words: every step between the two panels or shared by both, and one to each side; below 0 where it must not be.</summary>
    public long Seam(int end, int start)
    {
        long sum = 0;
        for (int step = 0; step < Length; step++)
        {
            bool touched = step + 1 >= Math.Min(end, start) && step <= Math.Max(end, start);
            if (touched && Cost[step] < 0)
                return -1;
            sum += touched ? Cost[step] : 0;
        }

        bool near = Wanted.Count == 0 || Wanted.Any(w => Math.Abs(end + start - (2 * w)) <= 2 * Slack);
        return near ? sum : OnlyWanted ? -1 : sum + Elsewhere;
    }

    /// <summary>How far panels of some lengths are from equal ones that overlap least.</summary>
    public long Spread(IEnumerable<int> lengths, int count) => lengths.Sum(l =>
    {
        long off = ((long)count * l) - Length - ((count - 1L) * OverlapLeast);
        return off * off;
    });
}
