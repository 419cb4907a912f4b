using Laydown.Measures;

namespace Laydown.Press.Handling;

/// <summary>The revised equation for lifting with two hands, [NIOSH1994].</summary>
/// <remarks>
/// RWL = 23 kg × 25/H × (1 − 0.003 |V − 75|) × (0.82 + 4.5/D) × (1 − 0.0032 A) × FM × CM, lengths in cm. It does not hold for lifts by a team, while carrying,
/// with one hand or of unstable loads; a large sheet is all of these before long, so it only says from where two people are surely needed.
/// </remarks>
public static class Lifting
{
    /// <summary>Mass taken as the most under the best conditions, kg.</summary>
    public const double LoadConstantKg = 23;

    /// <summary>Recommended weight limit, kg; 0 where the lift is outside what the equation holds for (farther than 63 cm, outside 0 cm to 175 cm, turned over 135°).</summary>
    /// <param name="horizontalCm">Hands in front of the ankles H, cm; under 25 counts as 25.</param>
    /// <param name="heightCm">Hands over the floor V at the start, cm.</param>
    /// <param name="travelCm">Way up or down D, cm; under 25 counts as 25.</param>
    /// <param name="turnDegrees">Turn of the body A, degrees, not negative.</param>
    /// <param name="frequencyFactor">FM by how often and how long, 0 to 1.</param>
    /// <param name="gripFactor">CM: 1 good, 0.95 fair (1 from 75 cm up), 0.9 poor.</param>
    public static double LimitKg(double horizontalCm, double heightCm, double travelCm, double turnDegrees = 0, double frequencyFactor = 1, double gripFactor = 1)
    {
        double h = Math.Max(25, Bounds.Within(horizontalCm, 0, 1000)), v = Bounds.Within(heightCm, -1000, 1000), d = Math.Max(25, Bounds.Within(travelCm, 0, 1000));
        if (h > 63 || v is < 0 or > 175 || d > 175 || Bounds.Within(turnDegrees, 0, 360) > 135)
            return 0;
        return LoadConstantKg * (25 / h) * (1 - (0.003 * Math.Abs(v - 75))) * (0.82 + (4.5 / d)) * (1 - (0.0032 * turnDegrees))
            * Bounds.Within(frequencyFactor, 0, 1) * Bounds.Within(gripFactor, 0, 1);
    }

    /// <summary>The same in inches and pounds, as the manual works its examples: 51 lb × 10/H × (1 − 0.0075 |V − 30|) × (0.82 + 1.8/D) × …; the two forms differ by up to 2.3 %.</summary>
    /// <param name="horizontalIn">H, in; under 10 counts as 10.</param>
    /// <param name="heightIn">V, in.</param>
    /// <param name="travelIn">D, in; under 10 counts as 10.</param>
    /// <param name="turnDegrees">A, degrees, not negative.</param>
    /// <param name="frequencyFactor">FM, 0 to 1.</param>
    /// <param name="gripFactor">CM, 0.9 to 1.</param>
    public static double LimitLb(double horizontalIn, double heightIn, double travelIn, double turnDegrees = 0, double frequencyFactor = 1, double gripFactor = 1)
    {
        double h = Math.Max(10, Bounds.Within(horizontalIn, 0, 400)), v = Bounds.Within(heightIn, -400, 400), d = Math.Max(10, Bounds.Within(travelIn, 0, 400));
        if (h > 25 || v is < 0 or > 70 || d > 70 || Bounds.Within(turnDegrees, 0, 360) > 135)
            return 0;
        return 51 * (10 / h) * (1 - (0.0075 * Math.Abs(v - 30))) * (0.82 + (1.8 / d)) * (1 - (0.0032 * turnDegrees))
            * Bounds.Within(frequencyFactor, 0, 1) * Bounds.Within(gripFactor, 0, 1);
    }

    /// <summary>Limit for one person who lays a sheet: arms 45 cm out, from a stack at 75 cm, 30 cm of way, once a minute, poor grip; kg.</summary>
    /// <remarks>FM 0.94 and CM 0.90; a sheet wider than that is held farther out, for which the equation gives less.</remarks>
    public static double OneSheetKg => LimitKg(45, 75, 30, 0, 0.94, 0.90);
}
