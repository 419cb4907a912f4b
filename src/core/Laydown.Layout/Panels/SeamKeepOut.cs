using Laydown.Measures;

namespace Laydown.Layout.Panels;

/// <summary>A place of a graphic that seams should stay out of: a face, text, a code, a logo.</summary>
/// <param name="Place">Where, mm from the lower left corner of the finished piece.</param>
/// <param name="CostPerMm">What each millimetre of a seam's width costs that runs through it; 0 to 1 000 000. Only the ratio to others counts.</param>
/// <param name="Never">Whether no seam may run through it at all.</param>
/// <param name="What">What is there, for people; null for no words.</param>
public sealed record SeamKeepOut(RectMm Place, int CostPerMm, bool Never = false, string? What = null);
