using Laydown.Measures;

namespace Laydown.Optics.Layers;

/// <summary>What the surfaces of a layer add to its light, and how to take them off a reading [Saunderson1942].</summary>
/// <remarks>"Inside" is what the layer would do in a medium of its own index; "seen" is what an instrument in air finds.</remarks>
public static class Saunderson
{
    /// <summary>Seen reflectance of an opaque layer with one face: k1 + (1 − k1)(1 − k2)R/(1 − k2·R).</summary>
    /// <param name="inside">R, 0 to 1.</param>
    /// <param name="outer">k1, share of the light from outside sent back by the face and seen by the instrument, 0 to under 1; 0 when
    /// gloss is left out.</param>
    /// <param name="inner">k2, share of the light from inside sent back, 0 to under 1; 0.4 to 0.65 in fits (from memory), 0.596 for n
    /// = 1.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is NaN or outside its range.</exception>
    public static double Seen(double inside, double outer, double inner)
    {
        Bounds.Within(inside, 0, 1);
        CheckFaces(outer, inner);
        return outer + ((1 - outer) * (1 - inner) * inside / (1 - (inner * inside)));
    }

    /// <summary>The inside of an opaque layer from its seen reflectance: <see cref="Seen(double, double, double)"/> turned round.</summary>
    /// <param name="seen">Reflectance in air, k1 to 1.</param>
    /// <param name="outer">k1, 0 to under 1.</param>
    /// <param name="inner">k2, 0 to under 1.</param>
    /// <exception cref="ArgumentException">The reading is darker than the face alone or over 1, or a face is outside its range.</exception>
    public static double Inside(double seen, double outer, double inner)
    {
        CheckFaces(outer, inner);
        double entered = seen - outer;
        if (!(entered >= 0 && seen <= 1))
            throw new ArgumentException(
                Invariant($"Reflectance: found {seen}; wanted {outer}, which the face alone sends back, to 1."), nameof(seen));
        return entered / (((1 - outer) * (1 - inner)) + (inner * entered));
    }

    /// <summary>Reflectance at 45:0, gloss left out, of an opaque layer: T_in·T_out·R/(1 − r_i·R).</summary>
    /// <param name="inside">R, 0 to 1.</param>
    /// <param name="surface">The face.</param>
    /// <exception cref="ArgumentOutOfRangeException">R is NaN or outside its range.</exception>
    public static double SeenAt45(double inside, Boundary surface)
    {
        Bounds.Within(inside, 0, 1);
        return surface.InFrom45 * surface.OutNormal * inside / (1 - (surface.DiffuseInside * inside));
    }

    /// <summary>The inside from a reflectance at 45:0: <see cref="SeenAt45"/> turned round.</summary>
    /// <param name="seen">Reflectance, 0 to <see cref="LightestAt45"/>.</param>
    /// <param name="surface">The face.</param>
    /// <exception cref="ArgumentException">The reading is lighter than a layer that loses nothing looks under this face.</exception>
    public static double InsideAt45(double seen, Boundary surface)
    {
        double lightest = LightestAt45(surface);
        if (!(seen >= 0 && seen <= lightest * (1 + 1e-9)))
            throw new ArgumentException(
                Invariant($"Reflectance at 45:0: found {seen}; wanted 0 to {lightest}, a white that loses nothing."), nameof(seen));
        return Math.Min(1, seen / ((surface.InFrom45 * surface.OutNormal) + (surface.DiffuseInside * seen)));
    }

    /// <summary>Reflectance at 45:0 of a layer that loses nothing; 1.004 for n = 1.5, as the face sorts directions.</summary>
    public static double LightestAt45(Boundary surface) => SeenAt45(1, surface);

    /// <summary>A film with a face on each side, all light diffuse.</summary>
    /// <param name="inside">The film; any, also one that differs from its two sides.</param>
    /// <param name="surface">Both faces.</param>
    public static LayerLight Film(LayerLight inside, Boundary surface) => surface.Layer.Over(inside).Over(surface.Layer.Reversed());

    /// <summary>The inside of a film that is the same from both sides, from reflectance and transmittance in air, all light diffuse, gloss
    /// included.</summary>
    /// <remarks>Sum and difference of both keep apart: m = r_e + (1 − r_e)(1 − r_i)P/(1 − r_i·P) holds for P = R + T and for R − T
    /// alike.</remarks>
    /// <param name="reflectance">Reflectance in air, 0 to 1.</param>
    /// <param name="transmittance">Transmittance in air, 0 to 1; with the reflectance at most 1.</param>
    /// <param name="surface">Both faces.</param>
    /// <exception cref="ArgumentException">No film with these faces can look so: less light comes back than the faces send, or more comes
    /// out than goes in.</exception>
    public static LayerLight FilmInside(double reflectance, double transmittance, Boundary surface)
    {
        Bounds.Within(reflectance, 0, 1);
        Bounds.Within(transmittance, 0, 1);
        double sum = TakeOff(reflectance + transmittance, surface), difference = TakeOff(reflectance - transmittance, surface);
        double r = (sum + difference) / 2, t = (sum - difference) / 2;
        if (!(r >= -1e-9 && t >= -1e-9 && sum <= 1 + 1e-9))
            throw new ArgumentException(
                Invariant($"Film: R {reflectance} and T {transmittance} in air give {r} and {t} inside; wanted none under 0, sum at most 1."),
                nameof(reflectance));
        return LayerLight.Symmetric(Math.Max(0, r), Math.Max(0, t));
    }

    /// <summary>P of a measured sum or difference of R and T; less than −1, without end, where no P gives so little.</summary>
    internal static double TakeOff(double measured, Boundary surface)
    {
        double entered = (measured - surface.DiffuseOutside) / (surface.InDiffuse * surface.OutDiffuse);
        double below = 1 + (surface.DiffuseInside * entered);
        return below > 0 ? entered / below : double.NegativeInfinity;
    }

    private static void CheckFaces(double outer, double inner)
    {
        Bounds.Within(outer, 0, 0.999);
        Bounds.Within(inner, 0, 0.999);
    }
}
