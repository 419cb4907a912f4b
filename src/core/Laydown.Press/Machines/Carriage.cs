namespace Laydown.Press.Machines;

/// <summary>How the carriage moves across the belt.</summary>
/// <param name="AccelerationMPerS2">Acceleration at each end, m/s².</param>
/// <param name="OverRunMm">Extra travel on each side so that all heads and lamps clear the sheet, mm.</param>
/// <param name="FiringKhz">Highest firing rate of a nozzle, kHz.</param>
/// <param name="DropSpeedMPerS">Speed of a falling drop, m/s.</param>
/// <param name="ReturnSpeedMPerS">Speed of an empty return in one-way modes, m/s.</param>
public sealed record Carriage(
    double AccelerationMPerS2, double OverRunMm, double FiringKhz, double DropSpeedMPerS, double ReturnSpeedMPerS);
