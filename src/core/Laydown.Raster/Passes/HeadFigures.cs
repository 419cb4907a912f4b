using System.Numerics;
using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>A head and its walk in plain numbers.</summary>
/// <param name="Nozzles">Nozzles of one block that print one layer: J = P · F.</param>
/// <param name="RowsBetweenNozzles">Printed rows from one nozzle to the next: S, without a common divisor with F.</param>
/// <param name="FeedRows">Rows the sheet moves between scans: F.</param>
/// <param name="Passes">Scans over every row: P.</param>
/// <param name="Blocks">Blocks the head is split into along the feed, one for each layer printed in one go: k.</param>
/// <param name="TwoWay">Whether every other scan goes back.</param>
/// <param name="ScanDpi">Dots an inch along the scan.</param>
/// <param name="FeedDpi">Rows an inch along the feed.</param>
/// <param name="FeatherNozzles">Nozzles at either end of a block whose share of dots fades out, 0 to F; 0 for a hard edge. One pass has
/// nothing to fade into.</param>
/// <param name="Mask">How dots are dealt out to passes.</param>
/// <param name="Seed">Another seed deals out otherwise.</param>
public sealed record HeadFigures(
    int Nozzles, int RowsBetweenNozzles, int FeedRows, int Passes, int Blocks, bool TwoWay, int ScanDpi, int FeedDpi,
    int FeatherNozzles = 0, PassMask Mask = PassMask.Columns, int Seed = 1)
{
    /// <summary>Length of one row along the feed, mm.</summary>
    public double RowMm => 25.4 / FeedDpi;

    /// <summary>Length of one column along the scan, mm.</summary>
    public double ColumnMm => 25.4 / ScanDpi;

    /// <summary>These figures, when every row is met exactly P times by them.</summary>
    /// <exception cref="ArgumentException">A number is out of its range, or rows would be missed.</exception>
    internal HeadFigures Sound()
    {
        Bounds.Within(Nozzles, 1, 1_000_000);
        Bounds.Within(RowsBetweenNozzles, 1, 1000);
        Bounds.Within(FeedRows, 1, 1_000_000);
        Bounds.Within(Passes, 1, 256);
        Bounds.Within(Blocks, 1, 99);
        Bounds.Within(ScanDpi, 1, 100_000);
        Bounds.Within(FeedDpi, 1, 100_000);
        Bounds.Within(FeatherNozzles, 0, Passes > 1 ? FeedRows : 0);
        return BigInteger.GreatestCommonDivisor(FeedRows, RowsBetweenNozzles) == 1 && Nozzles == (long)Passes * FeedRows
            ? this
            : throw new ArgumentException(Invariant(
                $"Walk: found {Nozzles} nozzles, {RowsBetweenNozzles} rows apart, feed {FeedRows} rows, {Passes} passes; ")
                + "wanted nozzles = passes × feed rows, and rows apart and feed without a common divisor.");
    }
}
