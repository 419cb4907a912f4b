namespace Laydown.Plan.Calendar;

/// <summary>Days on which no shift of the week starts.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="First">First day.</param>
/// <param name="Last">Last day; the first again for a single day.</param>
public sealed record ShopHoliday(string Name, DateOnly First, DateOnly Last)
{
    /// <summary>Whether the day is one of them.</summary>
    public bool Covers(DateOnly day) => First <= day && day <= Last;
}
