namespace Laydown.Layout.Sheets;

/// <summary>A strip of the belt that takes blanks, one behind the other.</summary>
/// <param name="Number">From 1, from the belt's origin.</param>
/// <param name="StartMm">Where it starts across the belt: the side lay, mm.</param>
/// <param name="WidthMm">Width of the blank lying in it, mm.</param>
/// <param name="Blanks">How many blanks go through it.</param>
/// <param name="EndMm">The lay, or side of the belt, up to which it reaches, mm: its width on the grid of lays; 0 in runs made before it was told.</param>
/// <param name="BlankId">Which blanks, where lanes take different ones; else null.</param>
/// <param name="FeedMm">What a blank of this lane takes along the feed, mm, where lanes take different ones; else null.</param>
/// <param name="Turned">Whether the blanks of this lane lie turned, where lanes take different ones; else null.</param>
/// <param name="Loaded">Its place in the order of loading, from 1; 0 in runs made before it was told.</param>
public sealed record Lane(
    int Number, double StartMm, double WidthMm, int Blanks, double EndMm = 0, string? BlankId = null, double? FeedMm = null, bool? Turned = null, int Loaded = 0);
