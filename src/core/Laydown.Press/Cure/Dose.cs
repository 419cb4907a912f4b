using Laydown.Measures;
using Laydown.Press.Machines;

namespace Laydown.Press.Cure;

/// <summary>UV dose of a layer.</summary>
/// <remarks>Dose = irradiance × time under the lamp, once for each passage of each lamp. Peak irradiance is another quantity and is kept apart.</remarks>
public static class Dose
{
    /// <summary>Dose of one passage, mJ/cm².</summary>
    /// <param name="irradianceWPerCm2">Irradiance at the sheet, W/cm², 0 to 1000.</param>
    /// <param name="windowMm">Window of the lamp along the travel, mm.</param>
    /// <param name="speedMPerS">Carriage speed, m/s, over 0.</param>
    public static double OfPassage(double irradianceWPerCm2, double windowMm, double speedMPerS) =>
        Bounds.Within(irradianceWPerCm2, 0, 1000) * Bounds.Within(windowMm, 0, 10_000) / Bounds.Within(speedMPerS, 0.001, 100);

    /// <summary>Doses of the layers of one face that are printed in one go, the first printed first, mJ/cm².</summary>
    /// <remarks>
    /// Every layer printed later brings the lamps over those below once more for each of its passes, so the first of n gets n times what the last gets. What the
    /// ink above keeps away is not taken off: an upper bound for all but the last, which says how far the first may be cured beyond need.
    /// </remarks>
    /// <param name="lamp">The lamps.</param>
    /// <param name="mode">The mode.</param>
    /// <param name="layers">Layers of the face, 1 to 99.</param>
    public static IReadOnlyList<double> OfLayers(Lamp lamp, Mode mode, int layers)
    {
        double last = OfLastLayer(lamp, mode).Value;
        return [.. Enumerable.Range(1, (int)Bounds.Within(layers, 1, 99)).Reverse().Select(times => times * last)];
    }

    /// <summary>Dose that the layer printed last gets: all its passes under all lamps. Earlier layers of the same face get more.</summary>
    public static Figure OfLastLayer(Lamp lamp, Mode mode)
    {
        double each = OfPassage(lamp.IrradianceWPerCm2 * Bounds.Within(mode.LampPercent, 0, 100) / 100, lamp.WindowMm, mode.SpeedMPerS);
        return new("UV dose of the last layer", each * mode.Passes * lamp.Count, "mJ/cm²",
            Invariant($"{lamp.IrradianceWPerCm2} W/cm² × {mode.LampPercent} % × {lamp.WindowMm} mm / {mode.SpeedMPerS} m/s = {each:0} mJ/cm²; × {mode.Passes} passes × {lamp.Count} lamp(s)"),
            FigureSource.Definition);
    }
}
