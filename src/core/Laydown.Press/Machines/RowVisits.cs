namespace Laydown.Press.Machines;

/// <summary>What a simulated feed does to the rows once every nozzle has come in (steady state).</summary>
/// <param name="Fewest">Visits of the row met least.</param>
/// <param name="Most">Visits of the row met most.</param>
/// <param name="FirstWrongRow">First row, from 0 within one feed step, met too seldom, or else met too often; null when there is none.</param>
/// <param name="VisitsThere">How often that row is met; the wanted number when there is none.</param>
public sealed record RowVisits(int Fewest, int Most, int? FirstWrongRow, int VisitsThere);
