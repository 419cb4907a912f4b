using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>Scanning arithmetic: how often the carriage crosses a sheet and how long that takes.</summary>
/// <remarks>
/// Scans = ⌈(feed length + swath) / step⌉: the whole head must pass the leading and the trailing edge. One scan = (x + 2 o) / v + 2 v / a, with x the
/// scanned width, o the over-run on each side and a full stop at each turn; a one-way mode adds the empty return.
/// Layers printed in one go share the head, split into as many blocks along the feed; the step shrinks with the block.
/// </remarks>
public static class Scanning
{
    /// <summary>Plans one face of one sheet.</summary>
    /// <param name="press">The press.</param>
    /// <param name="mode">One of its modes.</param>
    /// <param name="acrossMm">Width scanned across the belt, mm, over 0.</param>
    /// <param name="feedMm">Length along the feed, mm, over 0.</param>
    /// <param name="layers">Layers of this face, printed in one go; at least 1.</param>
    /// <returns>The plan, or the faults of the mode.</returns>
    public static Reading<ScanPlan> Of(PressDescription press, Mode mode, double acrossMm, double feedMm, int layers)
    {
        Bounds.Within(acrossMm, 0.001, 1e6);
        Bounds.Within(feedMm, 0.001, 1e7);
        Channel longest = press.Channels.MaxBy(c => (double)mode.NozzlesUsed / c.NozzlesPerInch)
            ?? throw new ArgumentException("A press without channels cannot print.", nameof(press));
        return Coverage.Split(mode, longest, layers).Then(cover =>
        {
            double swathMm = SwathMm(mode, longest);
            double stepMm = cover.FeedRows * 25.4 / mode.FeedDpi;
            int scans = (int)Math.Ceiling(((feedMm + swathMm) / stepMm) - 1e-9);
            double perScan = SecondsPerScan(press.Carriage, mode, acrossMm);
            return Reading.Of(new ScanPlan(cover, swathMm, stepMm, scans, perScan, scans * perScan,
                Figures(press.Carriage, mode, longest, cover, acrossMm, feedMm, swathMm, stepMm, scans, perScan)));
        });
    }

    /// <summary>Length of the nozzles in use along the feed: J × native pitch, mm.</summary>
    public static double SwathMm(Mode mode, Channel channel) => mode.NozzlesUsed * 25.4 / channel.NozzlesPerInch;

    /// <summary>Time of one scan over <paramref name="acrossMm"/>, turn included, s.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Speed or acceleration is not over 0.</exception>
    public static double SecondsPerScan(Carriage carriage, Mode mode, double acrossMm)
    {
        double wayM = (acrossMm + (2 * carriage.OverRunMm)) / 1000;
        double there = Trip(wayM, mode.SpeedMPerS, carriage.AccelerationMPerS2);
        return mode.TwoWay ? there : there + Trip(wayM, carriage.ReturnSpeedMPerS, carriage.AccelerationMPerS2);
    }

    // Constant speed over the way, then to a stop and up to speed again: v/a + v/a.
    private static double Trip(double wayM, double speedMPerS, double accelerationMPerS2) =>
        (wayM / Bounds.Within(speedMPerS, 0.001, 100)) + (2 * speedMPerS / Bounds.Within(accelerationMPerS2, 0.001, 1000));

    private static Figure[] Figures(Carriage carriage, Mode mode, Channel channel, CoveragePlan cover,
        double acrossMm, double feedMm, double swathMm, double stepMm, int scans, double perScan) =>
        [
            new("swath", swathMm, "mm", Invariant($"{mode.NozzlesUsed} nozzles × 25.4 mm / {channel.NozzlesPerInch} per inch"), FigureSource.Definition),
            new("step", stepMm, "mm", Invariant($"{cover.FeedRows} rows × 25.4 mm / {mode.FeedDpi} dpi, head in {cover.Blocks} block(s)"), FigureSource.Derived),
            new("scans of one face", scans, "", Invariant($"⌈({feedMm:0.#} + {swathMm:0.#}) mm / {stepMm:0.###} mm⌉"), FigureSource.Derived),
            new("time of one scan", perScan, "s",
                Invariant($"({acrossMm:0.#} + 2 × {carriage.OverRunMm:0.#}) mm / {mode.SpeedMPerS} m/s + 2 × {mode.SpeedMPerS} / {carriage.AccelerationMPerS2} m/s²") +
                (mode.TwoWay ? ", two-way" : Invariant($", and the empty return at {carriage.ReturnSpeedMPerS} m/s")), FigureSource.Derived),
        ];
}
