namespace Laydown.Demo.Profiles;

/// <summary>Some days after the demo's files were made, at nine.</summary>
/// <param name="days">Days, 0 or more.</param>
internal sealed class DemoClock(int days) : TimeProvider
{
    /// <inheritdoc/>
    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    /// <inheritdoc/>
    public override DateTimeOffset GetUtcNow() => DemoWorld.Made.AddDays(days);
}
