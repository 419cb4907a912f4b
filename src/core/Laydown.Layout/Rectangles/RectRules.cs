using Laydown.Layout.Sheets;

namespace Laydown.Layout.Rectangles;

/// <summary>How sheets are cut and what a rest is worth.</summary>
/// <param name="Process">Free or edge to edge.</param>
/// <param name="MostStages">Most stages of edge-to-edge cuts, trimming to size not counted; 0 for any number.</param>
/// <param name="FirstCutUpright">Whether the first stage cuts upright; counts only where stages are limited.</param>
/// <param name="LeastStrip">Least width of a strip of the first stage.</param>
/// <param name="OffcutLeastSide">Shorter side a rest must have to be kept; 0 keeps none.</param>
/// <param name="OffcutWorth">Share of its price by area that a kept rest is worth, 0 to 1.</param>
/// <param name="MostStrip">Greatest width of a strip of the first stage; 0 for any.</param>
internal sealed record RectRules(
    CutProcess Process, int MostStages = 0, bool FirstCutUpright = false, int LeastStrip = 0, int OffcutLeastSide = 0, double OffcutWorth = 0, int MostStrip = 0);
