using Laydown.Plan.Log;

namespace Laydown.Core.Tests.Log;

/// <summary>A run of ten sheets and what happened to it.</summary>
internal static class LogSamples
{
    public static LoggedRun Run { get; } = new("R-1", "press", "mode", "stock", new DateOnly(2026, 11, 26), 10, 10, 20, 5, 50, 3, 2, 40);

    public static IReadOnlyDictionary<string, double> Tanks { get; } = new Dictionary<string, double> { ["k"] = 2000 };

    public static IReadOnlyList<LogEntry> TwoTurns =>
    [
        Entry(1, 0, LogKind.Start),
        Entry(2, 30, LogKind.Stop) with { Stop = new(5, 1, 6, Done: false, InkMl: 30) },
        Entry(3, 50, LogKind.Start),
        Entry(4, 70, LogKind.Stop) with { Stop = new(6, 0, null, Done: true) },
    ];

    public static DateTimeOffset At(double minutes) => new DateTimeOffset(2026, 11, 26, 9, 0, 0, TimeSpan.FromHours(1)).AddMinutes(minutes);

    public static LogEntry Entry(long number, double minutes, LogKind kind) => new(number, At(minutes), kind, Run.RunId, Run.PressId);
}
