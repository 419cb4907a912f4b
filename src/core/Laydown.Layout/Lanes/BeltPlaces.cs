using Laydown.Layout.Packing;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Lanes;

/// <summary>How one board or one roll lies on the belt.</summary>
public static class BeltPlaces
{
    /// <summary>One board at a lay, held, with the least open vacuum beside it; as it comes where that is possible, else turned.</summary>
    /// <param name="name">What the board is called in a refusal, such as the stock's id.</param>
    /// <param name="board">Size of the board, mm.</param>
    /// <param name="count">How many boards; at least 1.</param>
    /// <param name="belt">The belt.</param>
    /// <returns>The place with one lane, or why the board cannot be laid and held.</returns>
    /// <exception cref="ArgumentException">The belt has no lay, more than 16 zones, or overlapping zones.</exception>
    public static Reading<BeltPlace> ForBoard(string name, SizeMm board, int count, Belt belt)
    {
        ArgumentNullException.ThrowIfNull(belt);
        Belt single = belt with { MaxLanes = 1 };
        Reading<BeltPlace> asItComes = LanePlan.Solve(name, board, count, mayTurn: false, single);
        return asItComes.IsTaken ? asItComes : LanePlan.Solve(name, board, count, mayTurn: true, single);
    }

    /// <summary>A roll at its station: the zones under it open so that it is held, with the least open vacuum beside it.</summary>
    /// <param name="name">What the roll is called in a refusal, such as the stock's id.</param>
    /// <param name="widthMm">Width of the roll, mm.</param>
    /// <param name="lengthMm">Length used, mm; not limited by the belt.</param>
    /// <param name="stationStartMm">Where the station's strip starts across the belt, mm.</param>
    /// <param name="belt">The belt; its lays are not used.</param>
    /// <returns>The place with one lane, or why the roll cannot lie there.</returns>
    /// <exception cref="ArgumentException">The belt has more than 16 zones, or overlapping zones.</exception>
    public static Reading<BeltPlace> ForRoll(string name, double widthMm, double lengthMm, double stationStartMm, Belt belt)
    {
        ArgumentNullException.ThrowIfNull(belt);
        Belt atStation = belt with { LaysMm = [stationStartMm], MaxLanes = 1, PinsMm = null };
        BeltChecks.Demand(atStation);
        SizeMm roll = new(widthMm, lengthMm);
        LaneChoice? choice = new LaneSearch(atStation, [new(Micro.Up(widthMm), 1, 1)], anyOrder: true, mostLanes: 1, []).Best();
        return choice is null
            ? Reading.Refused<BeltPlace>(BeltChecks.NoPlace(name, new(widthMm + stationStartMm, 0), mayTurn: false, atStation))
            : Reading.Of(BeltChecks.Place(atStation, roll, turned: false, choice, 1, "none"));
    }
}
