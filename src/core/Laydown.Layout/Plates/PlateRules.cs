namespace Laydown.Layout.Plates;

/// <summary>What cuts on a plate have to keep.</summary>
/// <param name="LeastColumn">Least width between two cuts of the first stage.</param>
/// <param name="MostColumn">Greatest width between two cuts of the first stage; the rest of the last plate is not bound.</param>
/// <param name="LeastRow">Least height between two cuts of the second stage.</param>
/// <param name="LeastWaste">Least side of any waste.</param>
/// <remarks>The published problem has 100, 3500, 100 and 20. [ROADEF2018]</remarks>
internal sealed record PlateRules(int LeastColumn = 0, int MostColumn = int.MaxValue, int LeastRow = 0, int LeastWaste = 0);
