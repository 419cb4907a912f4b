namespace Laydown.Layout.Guillotine;

/// <summary>Which sheets carry pieces of which group.</summary>
/// <param name="groups">How many groups want to share sheets.</param>
internal sealed class CutGroups(int groups)
{
    private readonly int[] sheets = new int[groups];
    private int[] pieces = [];

    /// <summary>Over all groups: sheets that carry pieces of it, less one.</summary>
    internal int Apart { get; private set; }

    internal void CopyFrom(CutGroups other)
    {
        if (groups == 0)
            return;

        if (pieces.Length != other.pieces.Length)
            pieces = new int[other.pieces.Length];
        other.pieces.CopyTo(pieces, 0);
        other.sheets.CopyTo(sheets, 0);
        Apart = other.Apart;
    }

    /// <summary>Whether a sheet carries pieces of a group.</summary>
    internal bool Carries(int slot, int group) => (slot * groups) + group is var at && at < pieces.Length && pieces[at] > 0;

    /// <summary>Pieces of a group come onto a sheet, or leave it where their number is negative.</summary>
    internal void Move(int slot, int group, int count)
    {
        int at = (slot * groups) + group;
        if (at >= pieces.Length)
            Array.Resize(ref pieces, Math.Max((slot + 1) * groups, pieces.Length * 2));
        bool was = pieces[at] > 0;
        pieces[at] += count;
        if (was == pieces[at] > 0)
            return;

        // One sheet is none too many: apart are all further ones.
        int before = Math.Max(0, sheets[group] - 1);
        sheets[group] += count > 0 ? 1 : -1;
        Apart += Math.Max(0, sheets[group] - 1) - before;
    }
}
