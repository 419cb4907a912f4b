namespace Laydown.Optics.Layers;

/// <summary>Light in a turbid slab with faces to air, followed in many directions: adding and doubling of radiative transfer
/// [Plass1973].</summary>
/// <remarks>
/// The measure of what two fluxes leave out: they take light inside as even in all directions, which it is not in layers that are thin or
/// that absorb. Costs a few milliseconds a slab; made for tables, not for pixels.
/// </remarks>
public static class SlabLight
{
    /// <summary>Directions in each range that the readings of this class are made with unless told otherwise.</summary>
    public const int UsualDirections = 16;

    /// <summary>Readings of a slab between air and air.</summary>
    /// <param name="matter">What is inside.</param>
    /// <param name="surface">Both faces.</param>
    /// <param name="directions">Directions followed in each of two ranges, 4 to 64.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of directions is outside its range.</exception>
    public static SlabReading Of(SlabMatter matter, Boundary surface, int directions = UsualDirections) =>
        Of([matter], surface, directions);

    /// <summary>Readings of slabs in optical contact, all of one refractive index, between air and air.</summary>
    /// <param name="matters">What is inside, from the viewer inward; at least one.</param>
    /// <param name="surface">Both faces.</param>
    /// <param name="directions">Directions followed in each of two ranges, 4 to 64.</param>
    /// <exception cref="ArgumentException">No slab, or a number of directions outside its range.</exception>
    public static SlabReading Of(IReadOnlyList<SlabMatter> matters, Boundary surface, int directions = UsualDirections)
    {
        Measures.Bounds.NotEmpty(matters);
        Streams streams = new(surface, Measures.Bounds.Within(directions, 4, 64));

        // Light beyond the limit of total reflection would run in a slab of nothing for ever: let a billionth of it be lost.
        IEnumerable<SlabMatter> parts = matters.All(m => m.OpticalThickness == 0) ? [new(1e-9, 0)] : matters;
        StreamLayer inside = parts.Select(m => StreamLayer.Of(m, streams)).Aggregate((upper, lower) => upper.Over(lower));
        return Read(inside, streams);
    }

    private static SlabReading Read(StreamLayer inside, Streams streams)
    {
        // The far face is a mirror from inside; all that goes down at the near face is what came in and what that face sent back.
        StreamMatrix one = StreamMatrix.One(streams.Count), mirror = StreamMatrix.Diagonal(streams.Face);
        StreamMatrix rising = (one - (mirror * inside.BackReflectance)).Inverse() * (mirror * inside.Inward);
        StreamMatrix seen = inside.FrontReflectance + (inside.Outward * rising);
        StreamMatrix falling = (one - (mirror * seen)).Inverse();
        StreamMatrix through = inside.Inward + (inside.BackReflectance * rising);

        double[] diffuse = falling * streams.Diffuse(), normal = falling * streams.Normal();
        double[] diffuseBack = streams.Leaving(seen * diffuse), normalBack = streams.Leaving(seen * normal);
        double[] diffuseOn = streams.Leaving(through * diffuse), normalOn = streams.Leaving(through * normal);
        double widened = streams.Surface.Index * streams.Surface.Index;
        return new(
            DiffuseReflectance: streams.Surface.DiffuseOutside + streams.Flux(diffuseBack),
            DiffuseTransmittance: streams.Flux(diffuseOn),
            NormalReflectance: streams.Surface.Normal + streams.Flux(normalBack),
            NormalTransmittance: streams.Flux(normalOn),
            ReflectanceAt45: normalBack[streams.At45] / widened,
            TransmittanceAt45: diffuseOn[streams.At45] / widened);
    }
}
