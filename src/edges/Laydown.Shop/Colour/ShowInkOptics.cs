using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Layers;

namespace Laydown.Shop.Colour;

/// <summary>Shows what is known of the optics of a print condition's inks, as it stands on the disk now.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
public sealed class ShowInkOptics(ShopFolder folder, IColourFiles files)
{
    private static readonly double[] Strengths = [10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 170, 180, 190, 200];

    /// <summary>The view, or the fault.</summary>
    /// <param name="conditionId">The print condition.</param>
    public Reading<InkOpticsView> Show(string conditionId) => new ConditionShelf(folder, files).Find(conditionId).Then(found =>
        files.InkSet(Path.Combine(folder.Catalogue, "inks", found.Condition.InkSetId + ".json")).Then(inks =>
            OpticsOf(found.Condition.OpticsId ?? inks.OpticsId).Then(optics => Reading.Of(View(found.Condition, inks, optics.Found)))));

    private static InkOpticsView View(PrintCondition condition, InkSet inks, InkOptics? optics)
    {
        InkRole[] roles = [.. inks.Inks.Select(i => i.Role)];
        return new(
            condition, inks, optics, [.. roles.Select(r => StackLights.LightOf(r, inks, optics))], StackLights.Missing(roles, inks, optics),
            inks.Find(InkRole.White) is null ? [] : [.. Strengths.Select(s => Hides(s, inks, optics))]);
    }

    private static HidingStep Hides(double strengthPercent, InkSet inks, InkOptics? optics)
    {
        RoleLight white = StackLights.LightOf(InkRole.White, inks, optics, strengthPercent);
        double laydowns = optics?.Find(InkRole.White)?.Laydowns(strengthPercent) ?? strengthPercent / 100;
        return new(strengthPercent, Math.Round(100 * laydowns, 2),
            Math.Round(100 * Hiding.ContrastRatio(white.Ink.Absorption, white.Ink.Scatter, 1), 2),
            Math.Round(100 * Hiding.Transmittance(white.Ink.Absorption, white.Ink.Scatter, 1), 2));
    }

    private Reading<Holder> OpticsOf(string? id) => id is null
        ? Reading.Of(new Holder(null))
        : files.InkOptics(Path.Combine(folder.Optics, id + ".json")).Then(optics => Reading.Of(new Holder(optics)));

    private sealed record Holder(InkOptics? Found);
}
