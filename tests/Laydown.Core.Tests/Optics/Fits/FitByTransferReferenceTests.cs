using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Optics.Fits;
using Laydown.Optics.Layers;
using Laydown.Optics.Looks;
using Xunit;

namespace Laydown.Core.Tests.Optics.Fits;

/// <summary>Steps of white read as radiative transfer says (<see cref="SlabLight"/>: another model than the fit's), fitted by the model of looks.</summary>
/// <remarks>What is left is the error of two fluxes, docs/decisions/0007: no noise is added. Bounds are what was measured, rounded up.</remarks>
public sealed class FitByTransferReferenceTests(ITestOutputHelper output)
{
    private const double BlackBacking = 0.03, WhiteBacking = 0.88;

    public static TheoryData<double, double, Behind[]> Whites() => new()
    {
        { 4, 0.6, [Behind.Black, Behind.White, Behind.Lamp] },
        { 8, 0.6, [Behind.Black, Behind.White, Behind.Lamp] },
        { 8, 0.6, [Behind.Black, Behind.White] },
        { 8, 0.6, [Behind.Black, Behind.Lamp] },
        { 8, 0.6, [Behind.White, Behind.Lamp] },
        { 8, 0, [Behind.Black, Behind.White, Behind.Lamp] },
        { 8, 0.85, [Behind.Black, Behind.White, Behind.Lamp] },
    };

    [Theory, MemberData(nameof(Whites))]
    public void A_white_of_radiative_transfer_is_met(double scatter, double asymmetry, Behind[] ways)
    {
        const int steps = 11;
        List<OpticsReading> readings = [];
        for (int step = 0; step <= steps; step++)
        {
            double share = step / (double)steps;
            SlabReading slab = SlabLight.Of(SlabMatter.From(new TurbidAmount(0.002 * scatter * share, scatter * share), asymmetry), Boundary.Ink);
            OpticsBuild build = step == 0 ? OpticsBuild.Bare : new([], share, []);
            readings.AddRange(ways.Select(way => new OpticsReading(Invariant($"P{step}"), way, build, Bands.Flat(
                way == Behind.Lamp ? slab.NormalTransmittance : slab.Before(way == Behind.White ? WhiteBacking : BlackBacking)))));
        }

        FittedOptics fitted = InkOpticsFit.Fit(
            new(readings, new(Bands.Flat(BlackBacking), Bands.Flat(WhiteBacking)), []), LookSheet.Clear(0.923), TestContext.Current.CancellationToken).Value;
        FittedInk white = fitted.Inks[0];
        double[] apart = [.. fitted.Residuals.Select(r => r.DeltaE).Order()];
        double curve = white.Asked.Zip(white.Acting).Max(p => Math.Abs(p.First - p.Second));
        output.WriteLine(Invariant($"S·X {scatter}, g {asymmetry}, {string.Join('+', ways)}: S found {white.Scatter[20]:0.000}, K/S {white.Absorption[20] / white.Scatter[20]:0.00000}, curve off {curve:0.000}, dE mean {apart.Average():0.00} max {apart[^1]:0.00}, dT max {100 * fitted.Residuals.Where(r => r.Behind == Behind.Lamp).Select(r => Math.Abs(r.DeltaY)).DefaultIfEmpty().Max():0.00}%"));

        // The looks are met; S is that of the model of looks, 0.87 to 0.91 of what transfer was given: the fit takes up the error of two fluxes.
        Assert.InRange(apart[^1], 0, 0.25);
        Assert.InRange(apart.Average(), 0, 0.07);
        Assert.All(fitted.Residuals, r => Assert.InRange(r.DeltaY, -0.008, 0.008));
        Assert.InRange(white.Scatter[20] / scatter, 0.86, 0.92);
        Assert.InRange(curve, 0, 0.07);
    }
}
