namespace Laydown.Raster.Passes;

/// <summary>One scan of the carriage.</summary>
/// <param name="Number">From 0, in time.</param>
/// <param name="Forth">Whether it goes from the origin of the scan; every other one of a two-way walk comes back.</param>
/// <param name="BeltMm">How far the sheet has moved since the first scan, mm.</param>
/// <param name="FirstRow">First row of the sheet under a nozzle.</param>
/// <param name="LastRow">Last row of the sheet under a nozzle; nozzles stand S rows apart between the two.</param>
/// <param name="FirstNozzle">Nozzle over the first row.</param>
/// <param name="LastNozzle">Nozzle over the last row.</param>
public sealed record PassScan(int Number, bool Forth, double BeltMm, int FirstRow, int LastRow, int FirstNozzle, int LastNozzle);
