using Laydown.Press.Inks;

namespace Laydown.Plan.Upkeep;

/// <summary>What of an ink must be on hand along the plan, and what is to be ordered.</summary>
/// <param name="Role">The ink.</param>
/// <param name="UsedMl">Ink the plan uses, ml.</param>
/// <param name="PouredMl">Ink it pours into tanks, ml.</param>
/// <param name="OnShelfMl">Ink on the shelf that has not expired at the start, ml.</param>
/// <param name="ExpiredMl">Ink on the shelf that has expired by the end without being poured, ml: not to be poured.</param>
/// <param name="MissingMl">What the shelf lacks for the pouring, ml.</param>
/// <param name="Packs">Bottles to order, whole.</param>
/// <param name="OrderBy">Day by which to order, so that they are there when they are poured, not before the start of the plan; null where nothing is ordered.</param>
/// <param name="NeededOn">Day on which the first of it is poured; null where nothing is ordered.</param>
public sealed record InkOrder(
    InkRole Role, double UsedMl, double PouredMl, double OnShelfMl, double ExpiredMl, double MissingMl, int Packs, DateOnly? OrderBy, DateOnly? NeededOn = null);
