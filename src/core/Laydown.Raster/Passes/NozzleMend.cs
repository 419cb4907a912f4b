using Laydown.Measures;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Passes;

/// <summary>Makes good what missing nozzles leave bare: the tone of the rows beside is raised by what is lost, half on each side, before
/// screening.</summary>
/// <remarks>
/// A row may be lost whole (one pass) or by a share (the other passes print theirs). What a neighbour cannot take, because it is full or
/// lost itself, goes to its
/// other side and then to the next rows out, up to three. Rows that lie near several lost rows share out their room evenly, so that
/// nothing depends on an order.
/// Deterministic: no chance, no table of chances (docs/decisions/0010). A row that is lost whole is set bare, so that ink is counted that
/// falls.
/// Tiles: inks × rows × columns of a sheet, told where they lie; rows off the sheet neither give nor take.
/// </remarks>
public sealed class NozzleMend : ITileStage
{
    /// <summary>How many rows to each side help.</summary>
    public const int Rings = 3;

    private readonly int rows;
    private readonly Dictionary<int, float[]> lost = [];

    /// <summary>A stage for the sheet of a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="layer">Layer from 0.</param>
    /// <param name="missing">Missing nozzles of each plane, nozzles of the whole head from 0; null where none is.</param>
    public NozzleMend(PassPlan plan, int layer, IReadOnlyList<IReadOnlySet<int>?> missing)
    {
        rows = plan.Rows;
        Bounds.Within(layer, 0, plan.Layers - 1);
        for (int ink = 0; ink < missing.Count; ink++)
        {
            if (missing[ink] is not { Count: > 0 } nozzles)
                continue;
            float[] shares = new float[rows];
            for (int row = 0; row < rows; row++)
                for (int pass = 0; pass < plan.Head.Passes; pass++)
                    if (nozzles.Contains(plan.MeetingAnywhere(layer, row, pass).Nozzle))
                        shares[row] += (float)plan.WeightOf(layer, row, pass);
            lost[ink] = shares;
        }
    }

    /// <summary>Six rows: three to the lost row, three more to what it looks at.</summary>
    public int ReachPixels => 2 * Rings;

    /// <inheritdoc/>
    public int TargetInks(int sourceInks) => sourceInks;

    /// <inheritdoc/>
    public void Run(Tile source, Tile target)
    {
        for (int ink = 0; ink < source.Inks; ink++)
        {
            for (int row = 0; row < target.Rows; row++)
                source.Row(ink, row + ReachPixels).Slice(ReachPixels, target.Columns).CopyTo(target.Row(ink, row));
            if (lost.TryGetValue(ink, out float[]? shares))
                Mend(source, target, ink, shares);
        }
    }

    private void Mend(Tile source, Tile target, int ink, float[] shares)
    {
        int first = source.FirstRow;
        for (int row = ReachPixels - Rings; row < source.Rows - ReachPixels + Rings; row++)
        {
            if (Share(shares, first + row) > 0)
                Lift(source, target, ink, shares, row);
        }

        for (int row = 0; row < target.Rows; row++)
        {
            if (Share(shares, first + row + ReachPixels) >= 1)
                target.Row(ink, row).Clear();
        }
    }

    // Rows are those of the source; row ReachPixels of it is row 0 of the target.
    private void Lift(Tile source, Tile target, int ink, float[] shares, int row)
    {
        Span<int> above = stackalloc int[Rings], below = stackalloc int[Rings];
        Span<float> holdsAbove = stackalloc float[Rings], holdsBelow = stackalloc float[Rings];
        for (int ring = 0; ring < Rings; ring++)
        {
            holdsAbove[ring] = Helps(shares, source.FirstRow + row - ring - 1);
            holdsBelow[ring] = Helps(shares, source.FirstRow + row + ring + 1);
        }

        for (int column = 0; column < target.Columns; column++)
        {
            int x = column + ReachPixels, need = (int)(source.Row(ink, row)[x] * Share(shares, source.FirstRow + row));
            for (int ring = 0; ring < Rings; ring++)
            {
                above[ring] = below[ring] = 0;
                if (need <= 0)
                    continue;
                int roomAbove = Room(source, ink, row - ring - 1, x, holdsAbove[ring]), roomBelow = Room(source, ink, row + ring + 1, x, holdsBelow[ring]);
                above[ring] = Math.Min(need / 2, roomAbove);
                below[ring] = Math.Min(need - above[ring], roomBelow);
                above[ring] = Math.Min(need - below[ring], roomAbove);
                need -= above[ring] + below[ring];
            }

            for (int ring = 0; ring < Rings; ring++)
            {
                Raise(target, ink, row - ReachPixels - ring - 1, column, above[ring]);
                Raise(target, ink, row - ReachPixels + ring + 1, column, below[ring]);
            }
        }
    }

    // What a row still takes. Where it is bare nothing was asked for, and nothing is put there: edges and gaps stay clean.
    private static int Room(Tile source, int ink, int row, int column, float holds)
    {
        if (!(holds > 0) || row < 0 || row >= source.Rows)
            return 0;
        int tone = source.Row(ink, row)[column];
        return tone == 0 ? 0 : (int)((Tile.Full - tone) * holds);
    }

    private static void Raise(Tile target, int ink, int row, int column, int by)
    {
        if (by > 0 && row >= 0 && row < target.Rows)
            target.Row(ink, row)[column] = (ushort)Math.Min(Tile.Full, target.Row(ink, row)[column] + by);
    }

    // Which share of its room a row gives to one lost row near it: none where it is lost itself.
    private float Helps(float[] shares, int row)
    {
        if (row < 0 || row >= rows || shares[row] > 0)
            return 0;
        int askers = 0;
        for (int near = row - Rings; near <= row + Rings; near++)
            askers += Share(shares, near) > 0 ? 1 : 0;
        return 1f / askers;
    }

    private float Share(float[] shares, int row) => row >= 0 && row < rows ? shares[row] : 0;
}
