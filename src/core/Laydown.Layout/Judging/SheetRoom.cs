using Laydown.Geometry.Shapes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Judging;

/// <summary>What pieces of a sheet must keep to.</summary>
/// <param name="Inside">Where pieces may lie, mm on the sheet.</param>
/// <param name="GapMm">Least distance between two pieces, and between a piece and a place kept out, mm; 0 or more.</param>
/// <param name="Process">How the sheet is cut apart.</param>
/// <param name="KeepOuts">Places where nothing may lie, mm on the sheet.</param>
/// <param name="Edge">Where pieces may lie on a sheet that is no rectangle; else null.</param>
public sealed record SheetRoom(RectMm Inside, double GapMm, CutProcess Process, IReadOnlyList<RectMm> KeepOuts, Shape? Edge = null);
