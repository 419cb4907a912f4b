namespace Laydown.Press.Machines;

/// <summary>How the nozzles of one layer walk over the rows of a sheet; every row is met exactly <see cref="Passes"/> times.</summary>
/// <param name="Nozzles">Nozzles of one block that print one layer: J.</param>
/// <param name="RowsBetweenNozzles">Printed rows from one nozzle to the next: S.</param>
/// <param name="FeedRows">Rows the sheet moves between scans: F.</param>
/// <param name="Passes">Scans over every row: P.</param>
/// <param name="Blocks">Blocks the head is split into, one for each layer printed in one go: k.</param>
public sealed record CoveragePlan(int Nozzles, int RowsBetweenNozzles, int FeedRows, int Passes, int Blocks);
