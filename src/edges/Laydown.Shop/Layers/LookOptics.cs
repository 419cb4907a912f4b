using Laydown.Optics.Looks;

namespace Laydown.Shop.Layers;

/// <summary>A stored look as the model of light sees it.</summary>
/// <param name="Sheet">The bare sheet.</param>
/// <param name="Layers">Layers in print order; a coverage for each plane of the look.</param>
/// <param name="ViewedFrom">The face toward the viewer.</param>
/// <param name="DayScene">Light by day.</param>
/// <param name="NightScene">Light with the lamp on.</param>
/// <param name="IsGeneric">Whether an ink rests on no reading of its own.</param>
public sealed record LookOptics(
    LookSheet Sheet, IReadOnlyList<LookLayer> Layers, LookFace ViewedFrom, Scene DayScene, Scene NightScene, bool IsGeneric)
{
    /// <summary>The look by day.</summary>
    public StackLook Day() => In(DayScene);

    /// <summary>The look with the lamp on.</summary>
    public StackLook Night() => In(NightScene);

    /// <summary>The look in any light.</summary>
    public StackLook In(Scene scene) => new(Sheet, Layers, scene, ViewedFrom);

    /// <summary>Reflectance and transmittance, band by band.</summary>
    public StackOptics Bands() => new(Sheet, Layers, DayScene.Backing, ViewedFrom);
}
