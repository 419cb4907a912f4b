namespace Laydown.Raster.Passes;

/// <summary>Where a row is met: which nozzle in which scan.</summary>
/// <param name="Scan">Scan from 0.</param>
/// <param name="Nozzle">Nozzle of the whole head from 0; 0 meets a row last.</param>
public readonly record struct PassMeeting(int Scan, int Nozzle);
