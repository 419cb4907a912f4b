using Laydown.Optics.Layers;

namespace Laydown.Core.Tests.Optics;

/// <summary>Surfaces put on and taken off again.</summary>
public sealed class SaundersonLawTests
{
    [Fact]
    public void One_face_there_and_back()
    {
        foreach (double r in new[] { 0, 0.02, 0.4, 0.9, 1 })
        {
            foreach ((double outer, double inner) in new[] { (0.04, 0.596), (0.03, 0.65), (0.0, 0.4), (0.0, 0.0) })
                Assert.Equal(r, Saunderson.Inside(Saunderson.Seen(r, outer, inner), outer, inner), tolerance: 1e-14);
            Assert.Equal(r, Saunderson.InsideAt45(Saunderson.SeenAt45(r, Boundary.Ink), Boundary.Ink), tolerance: 1e-14);
        }
    }

    [Fact]
    public void A_layer_that_loses_nothing_looks_white_through_its_face() =>
        Assert.Equal(1, Saunderson.Seen(1, 0.04, 0.6), tolerance: 1e-15);

    [Fact]
    public void A_free_film_there_and_back()
    {
        foreach ((double k, double s) in new[] { (0.0, 3.0), (0.3, 0.2), (0.02, 12.0), (1.0, 0.0) })
        {
            LayerLight inside = KubelkaMunk.Layer(k, s), film = Saunderson.Film(inside, Boundary.Ink);
            LayerLight found = Saunderson.FilmInside(film.FrontReflectance, film.Inward, Boundary.Ink);
            Assert.Equal(inside.FrontReflectance, found.FrontReflectance, tolerance: 1e-14);
            Assert.Equal(inside.Inward, found.Inward, tolerance: 1e-14);
        }
    }

    [Fact]
    public void A_free_film_obeys_the_closed_form()
    {
        // Rm = re + (1 − re)(1 − ri)[R − ri(R² − T²)]/N, Tm = (1 − re)(1 − ri)T/N, N = (1 − ri·R)² − ri²T² [Saunderson1942].
        double re = Boundary.Ink.DiffuseOutside, ri = Boundary.Ink.DiffuseInside;
        LayerLight inside = KubelkaMunk.Layer(0.1, 2), film = Saunderson.Film(inside, Boundary.Ink);
        (double r, double t) = (inside.FrontReflectance, inside.Inward);
        double n = ((1 - (ri * r)) * (1 - (ri * r))) - (ri * ri * t * t);
        Assert.Equal(re + ((1 - re) * (1 - ri) * (r - (ri * ((r * r) - (t * t)))) / n), film.FrontReflectance, tolerance: 1e-15);
        Assert.Equal((1 - re) * (1 - ri) * t / n, film.Inward, tolerance: 1e-15);
    }
}
