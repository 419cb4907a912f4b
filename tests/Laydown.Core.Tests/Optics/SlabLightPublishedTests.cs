using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Slabs that were computed by others and printed.</summary>
public sealed class SlabLightPublishedTests
{
    [Fact]
    public void A_slab_without_faces_as_printed()
    {
        // Albedo 0.9, thickness 2, g 0.75, light straight on: R 0.09739, T 0.66096 [VanDeHulst1980].
        SlabReading found = SlabLight.Of(new SlabMatter(2, 0.9, 0.75), new Boundary(1), directions: 24);
        Assert.Equal(0.09739, found.NormalReflectance, tolerance: 0.000006);
        Assert.Equal(0.66096, found.NormalTransmittance, tolerance: 0.000006);
    }

    [Fact]
    public void A_half_space_under_a_face_as_printed()
    {
        // Albedo 0.9, even scattering, n = 1.5, light straight on: R 0.2600 [Giovanelli1955].
        Assert.Equal(0.26, SlabLight.Of(new SlabMatter(200, 0.9), Boundary.Ink).NormalReflectance, tolerance: 0.0001);
    }
}
