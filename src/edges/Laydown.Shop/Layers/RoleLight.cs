using Laydown.Optics.Looks;
using Laydown.Press.Inks;

namespace Laydown.Shop.Layers;

/// <summary>An ink as light meets it, and where that comes from.</summary>
/// <param name="Role">The ink.</param>
/// <param name="Ink">Its optics at the strength asked for.</param>
/// <param name="AbsorptionFrom">Where its absorption comes from.</param>
/// <param name="ScatterFrom">Where its scatter comes from.</param>
/// <param name="Why">The same in a sentence for people.</param>
public sealed record RoleLight(InkRole Role, LookInk Ink, OpticsOrigin AbsorptionFrom, OpticsOrigin ScatterFrom, string Why)
{
    /// <summary>Whether any of it rests on no reading of this ink: to be flagged wherever it is shown.</summary>
    public bool IsGeneric => AbsorptionFrom == OpticsOrigin.Generic || ScatterFrom == OpticsOrigin.Generic;
}
