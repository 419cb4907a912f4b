namespace Laydown.Instances.Plates;

/// <summary>What cuts on plates have to keep; the published figures unless told otherwise. [ROADEF2018]</summary>
/// <param name="LeastColumn">Least width of a column.</param>
/// <param name="MostColumn">Greatest width of a column.</param>
/// <param name="LeastRow">Least height of a row.</param>
/// <param name="LeastWaste">Least side of waste.</param>
public sealed record PlateAsk(int LeastColumn = 100, int MostColumn = 3500, int LeastRow = 100, int LeastWaste = 20);
