namespace Laydown.Press.Machines;

/// <summary>The UV-LED lamps on the carriage.</summary>
/// <param name="WavelengthNm">Peak wavelength, nm.</param>
/// <param name="IrradianceWPerCm2">Irradiance at full power at the sheet, W/cm².</param>
/// <param name="WindowMm">Window along the travel, mm.</param>
/// <param name="Count">Lamps that pass each spot on one scan.</param>
public sealed record Lamp(int WavelengthNm, double IrradianceWPerCm2, double WindowMm, int Count);
