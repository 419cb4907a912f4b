using Laydown.Plan.Orders;

namespace Laydown.Plan.Calendar;

/// <summary>A bench at which runs are worked on after the press, such as the saw or the packing table.</summary>
/// <remarks>One run takes one place. Holidays of the shop hold for it, too. People who work at a press as well are not told apart: hours in which nobody is at the bench are left out of its shifts.</remarks>
/// <param name="Id">Stable short name, unique among the benches.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Kinds">What is done at it; each kind at one bench only.</param>
/// <param name="Places">How many runs are worked on at once at most, 1 to 20.</param>
/// <param name="Shifts">When it is worked; the crew of a shift is how many of its places are. Null for all places whenever a press is worked.</param>
/// <param name="Extra">Extra shifts; null for none.</param>
/// <param name="Closed">Hours in which it is not worked though a shift is on; null for none.</param>
/// <param name="GoesOnAlone">Whether work once begun goes on when the shift ends, such as a cutting table that runs by itself.</param>
public sealed record WorkBench(
    string Id, string Name, IReadOnlyList<FinishingKind> Kinds, int Places = 1, IReadOnlyList<WeekShift>? Shifts = null, IReadOnlyList<DayTime>? Extra = null,
    IReadOnlyList<DayTime>? Closed = null, bool GoesOnAlone = false)
{
    /// <summary>Its hours as a calendar of its own.</summary>
    /// <param name="shop">The calendar of the shop.</param>
    internal ShopCalendar HoursIn(ShopCalendar shop) => Shifts is null
        ? new(shop.TimeZone, shop.Shifts, shop.Holidays, [.. shop.Extra, .. Extra ?? []], [.. (shop.Closed ?? []).Where(c => c.PressIds is null), .. Closed ?? []])
        : new(shop.TimeZone, Shifts, shop.Holidays, Extra ?? [], Closed);
}
