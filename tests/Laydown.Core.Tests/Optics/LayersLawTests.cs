using Laydown.Core.Tests.Colour;
using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Conservation and symmetry of layers of light.</summary>
public sealed class LayersLawTests
{
    [Theory]
    [InlineData(0.001)]
    [InlineData(1)]
    [InlineData(20)]
    [InlineData(1e6)]
    public void Nothing_is_lost_without_absorption(double scatter)
    {
        LayerLight film = Boundary.Ink.Layer.Over(KubelkaMunk.Layer(0, scatter)).Over(Boundary.Ink.Layer.Reversed());
        Assert.Equal(1, film.FrontReflectance + film.Inward, tolerance: 1e-12);
        Assert.Equal(film.Inward, film.Outward, tolerance: 1e-15);
    }

    [Fact]
    public void A_thick_layer_is_as_an_endless_one() =>
        Assert.Equal(KubelkaMunk.ThickReflectance(0.01), KubelkaMunk.Layer(10, 1000).FrontReflectance, tolerance: 1e-15);

    [Fact]
    public void Without_scatter_Beers_law_holds() => Assert.Equal(LayerLight.Symmetric(0, Math.Exp(-0.7)), KubelkaMunk.Layer(0.7, 0));

    [Fact]
    public void Very_small_absorption_joins_on_to_none() =>
        Assert.Equal(KubelkaMunk.Layer(0, 5).Inward, KubelkaMunk.Layer(1e-13, 5).Inward, tolerance: 1e-10);

    [Fact]
    public void The_empty_layer_changes_nothing()
    {
        LayerLight layer = new(0.3, 0.2, 0.5, 0.4);
        Assert.Equal(layer, layer.Over(LayerLight.Empty));
        Assert.Equal(layer, LayerLight.Empty.Over(layer));
    }

    [Fact]
    public void Stacking_is_associative()
    {
        for (int i = 0; i < 100; i++)
        {
            (LayerLight a, LayerLight b, LayerLight c) = (Any(3 * i), Any((3 * i) + 1), Any((3 * i) + 2));
            LayerLight left = a.Over(b).Over(c), right = a.Over(b.Over(c));
            Assert.Equal(left.FrontReflectance, right.FrontReflectance, tolerance: 1e-13);
            Assert.Equal(left.Inward, right.Inward, tolerance: 1e-13);
        }
    }

    [Fact]
    public void A_stack_turned_over_swaps_its_faces()
    {
        for (int i = 0; i < 100; i++)
        {
            LayerLight turned = Any((2 * i) + 1).Reversed().Over(Any(2 * i).Reversed());
            LayerLight stack = Any(2 * i).Over(Any((2 * i) + 1)).Reversed();
            Assert.Equal(stack.FrontReflectance, turned.FrontReflectance, tolerance: 1e-14);
            Assert.Equal(stack.Outward, turned.Outward, tolerance: 1e-14);
        }
    }

    [Fact]
    public void Facing_mirrors_are_refused() =>
        Assert.Throws<ArgumentException>(() => LayerLight.Symmetric(1, 0).Over(LayerLight.Symmetric(1, 0)));

    [Fact]
    public void Amounts_under_nothing_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => KubelkaMunk.Layer(-0.1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => KubelkaMunk.Layer(0.1, double.NaN));
    }

    private static LayerLight Any(int index)
    {
        double[] s = Prints.Scatter(index + 1);
        return new(0.9 * s[0], 0.9 * s[1], (1 - (0.9 * s[0])) * s[2], (1 - (0.9 * s[1])) * s[3]);
    }
}
