using Laydown.Optics.Layers;
using Laydown.Optics.Looks;

namespace Laydown.Core.Tests.Optics;

/// <summary>Pictures on two faces of a sheet, by closed forms.</summary>
public sealed class ParallaxLawTests
{
    [Fact]
    public void Three_millimetres_at_thirty_degrees_shift_a_millimetre()
    {
        // sin θ' = 0.5/1.5 = 1/3, tan θ' = 1/√8: 3/√8 = 1.0607 mm; critical angle 41.8°: 2·3·tan = 6/√1.25 = 5.37 mm.
        Assert.Equal(3 / Math.Sqrt(8), Parallax.ShiftMm(3, 30, Boundary.Ink), tolerance: 1e-12);
        Assert.Equal(6 / Math.Sqrt(1.25), Parallax.HaloRadiusMm(3, Boundary.Ink), tolerance: 1e-12);
        Assert.Equal(1.06, Parallax.ShiftMm(3, 30, Boundary.Ink), tolerance: 0.005);
        Assert.Equal(5.4, Parallax.HaloRadiusMm(3, Boundary.Ink), tolerance: 0.05);
        Assert.Equal(2.7, Parallax.SpreadRadiusMm(3, Boundary.Ink), tolerance: 0.05);
    }

    [Fact]
    public void Straight_on_nothing_shifts_and_thickness_counts_in_proportion()
    {
        Assert.Equal(0, Parallax.ShiftMm(5, 0, Boundary.Ink));
        Assert.Equal(2 * Parallax.ShiftMm(2.5, 40, Boundary.Ink), Parallax.ShiftMm(5, 40, Boundary.Ink), tolerance: 1e-14);
        Assert.Equal(5 * Math.Tan(Math.PI / 6), Parallax.ShiftMm(5, 30, new Boundary(1)), tolerance: 1e-12);
    }

    [Fact]
    public void Planning_shifts_faces_as_optics_does()
    {
        // Plans know no optics and keep the rule in a line of their own, for n = 1.49.
        Boundary acrylic = new(1.49);
        foreach (double degrees in new[] { 0, 15, 30, 60, 89.0 })
            Assert.Equal(Parallax.ShiftMm(3, degrees, acrylic), Laydown.Plan.Build.Parallax.ShiftMm(3, degrees), tolerance: 1e-12);
    }

    [Fact]
    public void No_view_shifts_by_more_than_the_radius_of_spread()
    {
        for (int degrees = 0; degrees <= 89; degrees++)
            Assert.True(Parallax.ShiftMm(3, degrees, Boundary.Ink) < Parallax.SpreadRadiusMm(3, Boundary.Ink));
    }

    [Fact]
    public void One_face_is_advised_where_the_shift_exceeds_the_tolerance()
    {
        FaceAdvice thick = Parallax.Advise(3, 30, 0.5, Boundary.Ink), film = Parallax.Advise(0.05, 30, 0.5, Boundary.Ink);
        Assert.False(thick.BothFacesWillDo);
        Assert.StartsWith("Print on one face", thick.ToString(), StringComparison.Ordinal);
        Assert.True(film.BothFacesWillDo);
        Assert.True(Parallax.Advise(thick.ThickestMm * 0.999, 30, 0.5, Boundary.Ink).BothFacesWillDo);
        Assert.False(Parallax.Advise(thick.ThickestMm * 1.001, 30, 0.5, Boundary.Ink).BothFacesWillDo);
        Assert.Equal(100, Parallax.Advise(3, 0, 0.5, Boundary.Ink).ThickestMm);
    }

    [Fact]
    public void What_is_no_sheet_or_view_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Parallax.ShiftMm(-1, 30, Boundary.Ink));
        Assert.Throws<ArgumentOutOfRangeException>(() => Parallax.ShiftMm(3, 90, Boundary.Ink));
        Assert.Throws<ArgumentOutOfRangeException>(() => Parallax.HaloRadiusMm(3, new Boundary(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Parallax.Advise(3, 30, 0, Boundary.Ink));
    }
}
