namespace Laydown.Layout.Packing;

/// <summary>Millimetres as whole micrometres, so that sums of sizes are exact.</summary>
/// <remarks>Up to 2 km. A thousandth of a micrometre of slack takes up what floating point loses.</remarks>
internal static class Micro
{
    private const double Slack = 1e-3;

    /// <summary>What must hold <paramref name="mm"/>: rounded up.</summary>
    internal static int Up(double mm) => checked((int)Math.Ceiling((mm * 1000) - Slack));

    /// <summary>What <paramref name="mm"/> holds: rounded down.</summary>
    internal static int Down(double mm) => checked((int)Math.Floor((mm * 1000) + Slack));

    /// <summary>Back to millimetres.</summary>
    internal static double Mm(long micrometres) => micrometres / 1000.0;
}
