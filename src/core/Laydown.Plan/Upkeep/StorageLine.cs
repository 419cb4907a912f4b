using Laydown.Press.Inks;

namespace Laydown.Plan.Upkeep;

/// <summary>One ink line in a long stop.</summary>
/// <param name="ChannelId">The channel.</param>
/// <param name="TankId">Its tank.</param>
/// <param name="Role">Its ink.</param>
/// <param name="LimitHours">Longest it may stand, h; infinite lines that circulate have none and are not filled.</param>
/// <param name="FluidMl">Storage fluid, ml; 0 where it gets none.</param>
/// <param name="FillMinutes">Emptying and filling with fluid, minutes.</param>
/// <param name="BackMinutes">Flushing and filling with ink again, minutes.</param>
/// <param name="InkLostMl">Ink lost by that, ml.</param>
/// <param name="What">What is done with it, for people.</param>
public sealed record StorageLine(
    string ChannelId, string TankId, InkRole Role, double? LimitHours, double FluidMl, double FillMinutes, double BackMinutes, double InkLostMl, string What)
{
    /// <summary>When it is emptied and filled with fluid, one line after the other; null where it gets none.</summary>
    public DateTimeOffset? FillAt { get; init; }

    /// <summary>When it is flushed and filled with ink again; null where it got none.</summary>
    public DateTimeOffset? BackAt { get; init; }
}
