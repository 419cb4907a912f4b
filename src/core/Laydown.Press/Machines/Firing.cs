using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>Whether the nozzles can fire as fast as a mode moves the carriage.</summary>
public static class Firing
{
    /// <summary>Fastest carriage speed at which every nozzle still places each drop it owes, m/s.</summary>
    /// <remarks>
    /// v = firing rate × drop pitch along the scan × scans that share the columns of a row. All passes share them in turn, but where edges of swaths are feathered a row may
    /// belong nearly whole to one pass, which then owes neighbouring columns.
    /// </remarks>
    public static double FastestMPerS(Mode mode, Carriage carriage) =>
        Bounds.Within(carriage.FiringKhz, 0.001, 1000) * 1000 * 0.0254 / Bounds.Within(mode.ScanDpi, 1, 100_000) * Sharing(mode);

    /// <summary>Checks the speed of <paramref name="mode"/>.</summary>
    /// <returns>The fastest speed as a figure, or a fault when the mode is faster.</returns>
    public static Reading<Figure> Check(Mode mode, Carriage carriage, string file = "press.json", string path = "/modes")
    {
        double fastest = FastestMPerS(mode, carriage);
        return mode.SpeedMPerS > 0 && mode.SpeedMPerS <= fastest + 1e-9
            ? Reading.Of(new Figure("fastest carriage speed", fastest, "m/s",
                Invariant($"{carriage.FiringKhz} kHz × 25.4 mm / {mode.ScanDpi} × {Sharing(mode)} passes sharing the columns"), FigureSource.Definition))
            : Reading.Refused<Figure>(new InputFault(file, null, Invariant($"{path}/speedMPerS ({mode.Id})"),
                Invariant($"{mode.SpeedMPerS} m/s"),
                Invariant($"over 0 and at most {fastest:0.###} m/s: {carriage.FiringKhz} kHz at {mode.ScanDpi} dpi shared by {Sharing(mode)} passes")));
    }

    private static int Sharing(Mode mode) => mode.FeatherNozzles is > 0 ? 1 : mode.Passes;
}
