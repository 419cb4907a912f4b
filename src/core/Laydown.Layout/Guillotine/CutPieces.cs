namespace Laydown.Layout.Guillotine;

/// <summary>Pieces of a forest that have no place, and which groups lie on which sheets.</summary>
internal sealed class CutPieces
{
    private readonly CutJob job;
    private readonly int[] left;
    private readonly CutGroups groups;

    internal CutPieces(CutJob job)
    {
        this.job = job;
        groups = new(job.Groups);
        left = [.. job.Types.Select(t => t.Copies)];
        MissingArea = job.Types.Sum(t => t.Area * t.Copies);
        MissingCount = job.Types.Sum(t => t.Copies);
    }

    /// <summary>Area of all pieces without a place.</summary>
    internal long MissingArea { get; private set; }

    /// <summary>How many pieces have no place.</summary>
    internal int MissingCount { get; private set; }

    /// <summary>Over all groups: sheets that carry pieces of it, less one.</summary>
    internal int Apart => groups.Apart;

    /// <summary>Copies without a place, by type.</summary>
    internal ReadOnlySpan<int> Left => left;

    internal void CopyFrom(CutPieces other)
    {
        groups.CopyFrom(other.groups);
        Array.Copy(other.left, left, left.Length);
        (MissingArea, MissingCount) = (other.MissingArea, other.MissingCount);
    }

    /// <summary>Whether a sheet carries pieces of a group.</summary>
    internal bool Carries(int slot, int group) => groups.Carries(slot, group);

    /// <summary>A copy of a type comes onto a sheet (1) or leaves it (−1).</summary>
    internal void Move(int type, int slot, ref CutSheet sheet, int copies)
    {
        CutType t = job.Types[type];
        sheet.Pieces += copies;
        sheet.Area += copies * t.Area;
        left[type] -= copies;
        MissingArea -= copies * t.Area;
        MissingCount -= copies;
        if (t.Group >= 0)
            groups.Move(slot, job.GroupOf[type], copies);
    }
}
