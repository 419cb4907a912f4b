using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Reckons how far the two faces of a sheet lie apart, from the lays and edges that each face is laid against.</summary>
/// <remarks>
/// A sheet pushed against front lay and side lay lies within the error of the lay, each time it is laid. Where another edge comes to a lay, the sheet's real
/// size less its nominal size comes into the register in full; where the same edge comes to the same lay, it does not. Common practice, no source.
/// Boards out of square, and sheets turned while they are warm, come on top.
/// </remarks>
public static class FaceRegisters
{
    /// <summary>How far from its place a sheet lies after it is pushed against a lay, mm either way, where a press names none: common practice, no source.</summary>
    public const double LayErrorMm = 0.3;

    /// <summary>How far a side of a board may differ from nominal, mm either way, where a stock names none: common practice, no source.</summary>
    public const double SizeToleranceMm = 1;

    /// <summary>The register for one way to turn.</summary>
    /// <param name="press">The press: error of its lays, and whether a side lay can stand at the far side of a sheet.</param>
    /// <param name="stock">The stock: tolerance of its size.</param>
    /// <param name="turn">How it is turned, as it is drawn.</param>
    /// <param name="onItsSide">Whether the sheet lies on the belt turned against its drawing, its drawn width along the feed.</param>
    public static FaceRegister Of(PressDescription press, Stock stock, SheetTurn turn, bool onItsSide)
    {
        ArgumentNullException.ThrowIfNull(press);
        ArgumentNullException.ThrowIfNull(stock);
        bool side = (turn == SheetTurn.Sideways) != onItsSide;
        double lays = 2 * (press.LayErrorMm ?? LayErrorMm), tolerance = stock.SizeToleranceMm ?? SizeToleranceMm;
        bool far = side && press.FarSideLay;
        double across = lays + (side && !far ? tolerance : 0), along = lays + (side ? 0 : tolerance);
        string sides = !side ? "same edge at the same lay" : far ? "same edge, side lay at the far side" : Invariant($"another edge at the side lay: ± {tolerance:0.##} mm of the sheet's size");
        return new(turn, side, !side, across, along,
        [
            new("faces apart across the belt", across, "mm", Invariant($"2 layings × {lays / 2:0.##} mm; {sides}"), FigureSource.Derived),
            new("faces apart along the feed", along, "mm", Invariant($"2 layings × {lays / 2:0.##} mm; {(side ? "same edge at the front lay" : Invariant($"another edge at the front lay: ± {tolerance:0.##} mm of the sheet's size"))}"), FigureSource.Derived),
        ]);
    }

    /// <summary>The register for a wish: about the edge it names, or about the one that lets the faces lie less apart.</summary>
    /// <param name="press">The press.</param>
    /// <param name="stock">The stock.</param>
    /// <param name="about">About which edge.</param>
    /// <param name="drawn">The sheet as it is drawn, mm.</param>
    /// <param name="onItsSide">Whether it lies on the belt turned against its drawing.</param>
    public static FaceRegister Of(PressDescription press, Stock stock, TurnedAbout about, SizeMm drawn, bool onItsSide)
    {
        SheetTurn aboutLong = drawn.HeightMm >= drawn.WidthMm ? SheetTurn.Sideways : SheetTurn.HeadToFoot;
        SheetTurn aboutShort = aboutLong == SheetTurn.Sideways ? SheetTurn.HeadToFoot : SheetTurn.Sideways;
        return about switch
        {
            TurnedAbout.LongEdge => Of(press, stock, aboutLong, onItsSide),
            TurnedAbout.ShortEdge => Of(press, stock, aboutShort, onItsSide),
            // Of two that are alike the front edge stays where it is: it is the longer lay of the two.
            _ => new[] { SheetTurn.Sideways, SheetTurn.HeadToFoot }.Select(t => Of(press, stock, t, onItsSide)).OrderBy(r => r.MostMm).ThenBy(r => r.FrontEdgeChanges).First(),
        };
    }
}
