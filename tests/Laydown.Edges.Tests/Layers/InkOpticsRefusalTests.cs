using Laydown.Demo.Descriptions;
using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Stocks;
using Laydown.Shop.Layers;
using Xunit;

namespace Laydown.Edges.Tests.Layers;

public sealed class InkOpticsRefusalTests
{
    [Theory]
    [InlineData(3, -0.1)]
    [InlineData(0, double.NaN)]
    [InlineData(35, 1000)]
    public void A_value_no_ink_can_have_is_refused_by_ink_and_band(int band, double value)
    {
        double[] absorption = [.. SampleOptics.White().Absorption];
        absorption[band] = value;
        InputFault fault = Assert.Single(Faults(SampleOptics.White() with { Absorption = absorption }));
        Assert.Equal(Invariant($"/inks/1/absorption/{band}"), fault.Field);
        Assert.StartsWith(Invariant($"White, {380 + (10 * band)} nm: K·X {value}"), fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_white_that_does_not_scatter_is_refused() =>
        Assert.Equal(36, Faults(SampleOptics.White() with { Scatter = Colour.Spectra.Bands.Flat(0) }).Count);

    [Fact]
    public void Another_number_of_bands_is_refused() =>
        Assert.Contains("31 values of S·X", Assert.Single(Faults(SampleOptics.White() with { Scatter = new double[31] })).Found, StringComparison.Ordinal);

    [Theory]
    [InlineData(new double[] { 0, 60, 50, 100 })]
    [InlineData(new double[] { 0, 50 })]
    [InlineData(new double[] { 100 })]
    public void A_curve_that_does_not_rise_from_nothing_to_full_is_refused(double[] curve) =>
        Assert.Equal("/inks/1/curve", Assert.Single(Faults(SampleOptics.White() with { Curve = curve })).Field);

    [Fact]
    public void Sound_optics_have_no_fault_and_come_back_from_their_file()
    {
        Assert.Empty(InkOpticsFaults.Of("few-read.json", SampleOptics.Optics()));
        byte[] bytes = LaydownJson.ToBytes(SampleOptics.Optics());
        Reading<InkOptics> back = LaydownJson.Read<InkOptics>("few-read.json", new MemoryStream(bytes));
        Assert.Equal(bytes, LaydownJson.ToBytes(back.Value));
    }

    [Fact]
    public void Links_that_lead_nowhere_and_sheets_that_give_light_are_refused_with_the_catalogue()
    {
        string folder = Path.Combine(Path.GetTempPath(), "laydown-optics-" + Guid.NewGuid().ToString("N"));
        try
        {
            DemoCatalogue.Write(folder, CancellationToken.None);
            Directory.CreateDirectory(Path.Combine(folder, "optics"));
            File.WriteAllBytes(Path.Combine(folder, "optics", "few-read.json"), LaydownJson.ToBytes(SampleOptics.Optics()));
            string path = Path.Combine(folder, "stocks", "acrylic-opal-3.json");
            Stock opal = LaydownJson.ReadFile<Stock>(path).Value;
            File.WriteAllBytes(path, LaydownJson.ToBytes(opal with { ReflectancePercent = 70 }));

            IReadOnlyList<InputFault> faults = new Intake.Orders.CatalogueReader().Read(folder).Faults;
            Assert.Contains(faults, f => f.File == "few-read.json" && f.Field == "/inkSetId");
            Assert.Contains(faults, f => f.File == "acrylic-opal-3.json" && f.Field == "/transmittancePercent");
            Assert.False(StackLights.SheetOf(opal with { ReflectancePercent = 70 }).IsTaken);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IReadOnlyList<InputFault> Faults(InkLight white) =>
        InkOpticsFaults.Of("few-read.json", SampleOptics.Optics() with { Inks = [SampleOptics.Cyan(), white] });
}
