using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Layout;

/// <summary>Two rolls at two stations of a press, side by side.</summary>
/// <param name="Left">The roll nearer the belt's origin.</param>
/// <param name="LeftStation">Where it hangs.</param>
/// <param name="Right">The roll beside it.</param>
/// <param name="RightStation">Where that hangs.</param>
internal sealed record RollPair(Stock Left, RollStation LeftStation, Stock Right, RollStation RightStation)
{
    /// <summary>The two rolls at the first two stations that take them beside each other; null where there are none.</summary>
    /// <param name="press">The press.</param>
    /// <param name="left">Roll nearer the origin.</param>
    /// <param name="right">Roll beside it.</param>
    internal static RollPair? Of(PressDescription press, Stock left, Stock right) => (
        from one in press.Rolls.OrderBy(r => r.StartMm)
        from other in press.Rolls.OrderBy(r => r.StartMm)
        where one.StartMm + left.WidthMm <= other.StartMm && other.StartMm + right.WidthMm <= press.BeltWidthMm
        where Takes(one, left) && Takes(other, right)
        select new RollPair(left, one, right, other)).FirstOrDefault();

    /// <summary>Width from the outer side of one roll to that of the other, mm.</summary>
    internal double AcrossMm => RightStation.StartMm + Right.WidthMm - LeftStation.StartMm;

    /// <summary>The place of both on the belt: a lane for each, with the zones that hold them open.</summary>
    internal Reading<BeltPlace> OnBelt(double lengthMm, Belt belt)
    {
        Belt stations = belt with
        {
            LaysMm = [LeftStation.StartMm, RightStation.StartMm],
            MaxLanes = 2,
            LaneGapMm = 0,
            PinsMm = null,
            MaxFeedMm = lengthMm,
            Side = LoadSide.Front,
        };
        IReadOnlyList<LaneBlank> rolls = [new("left", new(Left.WidthMm, lengthMm), 1), new("right", new(Right.WidthMm, lengthMm), 1)];
        return LanePlan.Solve(Invariant($"{Left.Id} and {Right.Id}"), rolls, anyOrder: false, stations).Then(place => Reading.Of(place with
        {
            FrontLay = "none",
            Lanes = [place.Lanes[0] with { BlankId = Left.Id }, place.Lanes[1] with { BlankId = Right.Id }],
        }));
    }

    // As thick and heavy as a full roll is.
    private static bool Takes(RollStation station, Stock stock) =>
        stock.WidthMm <= station.MaxWidthMm
        && RollSize.OuterDiameterMm(RollSize.CoreMm, stock.LengthMm / 1000, stock.ThicknessMm) <= station.MaxDiameterMm
        && RollSize.MassKg(stock.WeightGPerM2, stock.WidthMm, stock.LengthMm / 1000) <= station.MaxMassKg;
}
