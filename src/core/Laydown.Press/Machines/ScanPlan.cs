using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>Scans and time for one face of one sheet.</summary>
/// <param name="Coverage">How the nozzles walk.</param>
/// <param name="SwathMm">Length of the whole head along the feed, all blocks, mm.</param>
/// <param name="StepMm">Feed between scans, mm.</param>
/// <param name="Scans">Carriage scans, leading and trailing edge included.</param>
/// <param name="SecondsPerScan">One scan with its turn, and the empty return of a one-way mode, s.</param>
/// <param name="Seconds">All scans of the sheet, s.</param>
/// <param name="Figures">How each was computed.</param>
public sealed record ScanPlan(
    CoveragePlan Coverage, double SwathMm, double StepMm, int Scans, double SecondsPerScan, double Seconds, IReadOnlyList<Figure> Figures);
