using Laydown.Geometry.Shapes;

namespace Laydown.Layout.Contours;

/// <summary>A board or an offcut of any shape.</summary>
/// <param name="Id">Unique in one problem.</param>
/// <param name="Area">Its shape, mm, with holes where material is missing.</param>
/// <param name="Copies">How many are at hand; null for as many as needed.</param>
/// <param name="Cost">Price of one, any currency; 0 or more. An offcut that is worth nothing else costs 0.</param>
/// <param name="EdgeMarginMm">Distance pieces keep from its edges and holes, mm; 0 or more.</param>
/// <param name="KeepOuts">What pieces must not lie on, such as clamps and damaged places, mm; null for nothing.</param>
public sealed record ContourStock(string Id, Shape Area, int? Copies, double Cost, double EdgeMarginMm = 0, IReadOnlyList<Shape>? KeepOuts = null);
