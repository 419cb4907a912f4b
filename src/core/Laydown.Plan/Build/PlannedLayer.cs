using Laydown.Press.Stacks;

namespace Laydown.Plan.Build;

/// <summary>A layer before it is known on which face it lies.</summary>
/// <param name="Group">What it is made of.</param>
/// <param name="For">Whom its picture is meant for.</param>
/// <param name="Source">Where its picture comes from; null for colour.</param>
/// <param name="Separation">The named separation, when that is the source.</param>
/// <param name="Page">Page it shows or is derived from.</param>
/// <param name="Percent">Strength, percent of full laydown.</param>
/// <param name="ChokeMm">Choke, mm.</param>
/// <param name="Negative">Whether its mask is read the other way round.</param>
/// <param name="Shaping">What is done to its mask after the choke; null for nothing.</param>
internal sealed record PlannedLayer(
    InkGroup Group, Viewer For, WhiteSource? Source, string? Separation, int Page, double Percent, double ChokeMm, bool Negative,
    MaskShaping? Shaping = null)
{
    /// <summary>The layer on a face: mirrored exactly when the one it is meant for looks at it through the sheet.</summary>
    internal Layer On(SheetFace face) => new Layer(
        face, Group, Source, Separation, Page, Percent, ChokeMm, (For == Viewer.Front) != (face == SheetFace.First), Negative).With(Shaping);
}
