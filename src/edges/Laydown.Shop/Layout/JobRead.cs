using Laydown.Layout.Jobs;

namespace Laydown.Shop.Layout;

/// <summary>A job that was read.</summary>
/// <param name="Job">Its contours are corners.</param>
/// <param name="Findings">What was repaired in its contours, each with the file it is of.</param>
public sealed record JobRead(LayoutJob Job, IReadOnlyList<JobFinding> Findings);
