using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;

namespace Laydown.Web.Tests.Sample;

/// <summary>What happened to a run of the sample shop, through the shop's own door.</summary>
internal static class SampleLog
{
    public const string Run = "R-20261126-02";

    public static async Task WriteAsync(ShopServices shop)
    {
        DateTimeOffset at = new(2026, 11, 26, 8, 0, 0, TimeSpan.Zero);
        LogEntry bare = new(0, at, LogKind.Start, Run, "", "Ada");
        await KeepAsync(shop, bare);
        await KeepAsync(shop, bare with { At = at.AddMinutes(1), Kind = LogKind.Thickness, Thickness = new([3, 3.1, 2.9, 3, 3]) });
        await KeepAsync(shop, bare with { At = at.AddMinutes(2), Kind = LogKind.Thickness, Thickness = new([3, 3, 2.9, 3.1, 3]) });
        foreach ((double across, int i) in new[] { 0.05, -0.02, 0.01, 0.03, -0.04, 0.02, -0.01, 0.9, 0.02, 0.04, -0.03, 0.01 }.Select((a, i) => (a, i)))
            await KeepAsync(shop, bare with { At = at.AddMinutes(3 + i), Kind = LogKind.Register, Register = new(across, -across / 2) });
        await KeepAsync(shop, bare with { At = at.AddMinutes(40), Kind = LogKind.Stop, Stop = new(3, 1, 4, Done: true) });
        RemakeNote remake = new(RemakeCause.Bands, RemakeFound.Finishing, null, 1, 0, 0, 8, RemakePayer.Shop, default, "");
        await KeepAsync(shop, bare with { At = at.AddMinutes(41), Kind = LogKind.Remake, Remake = remake });
        await KeepAsync(shop, bare with { At = at.AddMinutes(42), Kind = LogKind.Remake, Remake = remake with { Cause = RemakeCause.Dust, Minutes = 3 } });
    }

    private static async Task KeepAsync(ShopServices shop, LogEntry entry)
    {
        Reading<LogEntry> kept = await shop.Log!.Keep.KeepAsync(entry, CancellationToken.None);
        if (!kept.IsTaken)
            throw new InvalidOperationException(string.Join('\n', kept.Faults));
    }
}
