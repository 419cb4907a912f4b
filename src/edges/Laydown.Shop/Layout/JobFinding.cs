using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>A finding and the file it is of.</summary>
/// <param name="File">Name of the file.</param>
/// <param name="Finding">The finding.</param>
public sealed record JobFinding(string File, Finding Finding);
