using Laydown.Colour.Charts;
using Laydown.Colour.Readings;
using Laydown.Colour.Spectra;
using Laydown.Demo.Descriptions;
using Laydown.Demo.Profiles;
using Laydown.Formats.Readings;
using Laydown.Intake.Colour;
using Laydown.Intake.Orders;
using Laydown.Measures;
using Laydown.Optics.Fits;
using Laydown.Output.Charts;
using Laydown.Press.Inks;
using Laydown.Shop;
using Laydown.Shop.Colour;
using Laydown.Shop.Orders;
using Xunit;

namespace Laydown.Edges.Tests.Layers;

/// <summary>Ink optics from chart to look: the demo's invented readings, whose inks are known.</summary>
public sealed class InkOpticsUseLawTests : IDisposable
{
    private const string Condition = "long-belt-clear-sheets";
    private static readonly Lazy<byte[]> Text = new(() => new ColourFiles().ReadingsText(DemoOptics.Readings(31)));
    private readonly ShopFolder folder = new(Directory.CreateTempSubdirectory("laydown-optics-").FullName);
    private readonly ColourFiles files = new();

    public InkOpticsUseLawTests()
    {
        DemoCatalogue.Write(folder.Catalogue, CancellationToken.None);
        Directory.CreateDirectory(folder.Profiles);
        foreach (string profile in DemoCatalogue.Profiles)
            File.WriteAllBytes(Path.Combine(folder.Profiles, profile), [0]);
    }

    public void Dispose() => Directory.Delete(folder.Root, recursive: true);

    [Fact]
    public void What_stood_behind_comes_back_from_the_file()
    {
        ReadingSet made = DemoOptics.Readings(31), read = ReadingsFile.Read("optics.txt", Text.Value).Value;
        Assert.Equal(made.Patches.Select(p => (p.Id, p.Behind)), read.Patches.Select(p => (p.Id, p.Behind)));
        Assert.Equal(made.InkNames, read.InkNames);
        OpticsTable table = OpticsReadings.From([read]).Value;
        Assert.Empty(table.Notes);
        Assert.Equal(3 * 126, table.Readings.Count);
        Assert.Contains(table.Readings, r => r.Build.Words() == "Cyan 100 %, White 100 %");
        Assert.Contains(table.Readings, r => r.Build.Words() == "White 100 %, Cyan 100 %");
    }

    [Fact]
    public async Task Fitted_inks_are_the_inks_that_were_read_and_the_ink_set_names_them()
    {
        InkOpticsOutcome fit = (await FitAsync()).Value;
        FittedOptics truth = DemoOptics.Truth();
        foreach (FittedInk ink in truth.Inks)
        {
            InkLight found = fit.Optics.Find(InkRoleNames.Find(ink.Ink)!.Value)!;
            int beyond = Enumerable.Range(0, Bands.Count).Count(b => Math.Abs(found.Absorption[b] - ink.Absorption[b]) > 3 * found.AbsorptionError![b])
                + Enumerable.Range(0, Bands.Count).Count(b => Math.Abs(found.Scatter[b] - ink.Scatter[b]) > 3 * found.ScatterError![b]);

            // 0.3 % of a bell curve lie beyond three errors; the backings' own noise is not in the error stated.
            Assert.True(beyond <= 6, Invariant($"{ink.Ink}: {beyond} bands beyond three errors"));
        }

        Catalogue catalogue = new CatalogueReader().Read(folder.Catalogue).Value;
        Assert.Equal(fit.Optics.Id, catalogue.OpticsOf(catalogue.Conditions.Single(c => c.Id == Condition))!.Id);
        Assert.Null(catalogue.OpticsOf(catalogue.Conditions.Single(c => c.InkSetId == "five-inks")));
        InkOpticsView view = new ShowInkOptics(folder, files).Show(Condition).Value;
        Assert.Empty(view.Missing);
        Assert.All(view.Hiding.Zip(view.Hiding.Skip(1)), p => Assert.True(p.Second.HidingPercent >= p.First.HidingPercent && p.Second.ThroughPercent <= p.First.ThroughPercent));
    }

    [Fact]
    public async Task The_same_readings_give_the_same_bytes()
    {
        InkOpticsOutcome one = (await FitAsync()).Value, other = (await FitAsync()).Value;
        Assert.Equal(files.InkOpticsText(one.Optics), files.InkOpticsText(other.Optics));
    }

    [Fact]
    public async Task Refused_readings_leave_the_shop_as_it_was()
    {
        string[] before = [.. Directory.GetFiles(folder.Catalogue, "*", SearchOption.AllDirectories)];
        byte[] set = File.ReadAllBytes(Path.Combine(folder.Catalogue, "inks", "eight-inks.json"));
        ReadingSet only = DemoOptics.Readings(31);
        Reading<InkOpticsOutcome> refused = await FitAsync(files.ReadingsText(only with { Patches = [.. only.Patches.Where(p => p.Behind == Behind.Black)] }));
        Assert.Contains(refused.Faults, f => f.Field == "White");
        Reading<InkOpticsOutcome> unsaid = await FitAsync(files.ReadingsText(only with { Patches = [.. only.Patches.Select(p => p with { Behind = Behind.Unsaid })] }));
        Assert.Contains(unsaid.Faults, f => f.Wanted.StartsWith("black, white or lamp", StringComparison.Ordinal));
        Assert.Equal(before.Order(), Directory.GetFiles(folder.Catalogue, "*", SearchOption.AllDirectories).Where(f => !f.EndsWith("optics-in.txt", StringComparison.Ordinal)).Order());
        Assert.Equal(set, File.ReadAllBytes(Path.Combine(folder.Catalogue, "inks", "eight-inks.json")));
    }

    [Fact]
    public async Task Inks_that_the_set_does_not_have_are_refused()
    {
        ReadingSet made = DemoOptics.Readings(31);
        Reading<InkOpticsOutcome> refused = await FitAsync(
            files.ReadingsText(made with { InkNames = [.. made.InkNames.Select(n => n.Replace("Cyan", "Teal", StringComparison.Ordinal))] }));
        Assert.Contains(refused.Faults, f => f.Field == "inks" && f.Found.Contains("Teal", StringComparison.Ordinal));
    }

    [Fact]
    public void A_chart_of_ink_optics_is_written_layer_by_layer_with_its_instructions()
    {
        Catalogue catalogue = new CatalogueReader().Read(folder.Catalogue).Value;
        MakeChart make = new(folder, catalogue, files, new ChartFiles(Path.Combine(folder.Root, "scratch")), TimeProvider.System);
        MadeChart made = make.Make(new(Condition, null, ChartKind.InkOptics, ReadingWay.Hand, 1), CancellationToken.None).Value;
        Assert.Equal(126, made.Patches);
        Assert.Equal(2 + (3 * made.Sheets), made.Files.Count);
        Assert.Equal(
            ["-1-layer-1-colours-under-white.tif", "-1-layer-2-white.tif", "-1-layer-3-colours.tif"],
            made.Files.Where(f => f.Contains("-1-layer", StringComparison.Ordinal)).Select(f => f[made.Id.Length..]));

        // The reference asks for no more than one full laydown of any ink and reads back as the builds of the design.
        string text = File.ReadAllText(Path.Combine(folder.Charts, made.Id, made.Id + ".txt"));
        Assert.Contains("\"Cyan under white\"", text, StringComparison.Ordinal);
        Reading<MadeChart> opaque = make.Make(new(Condition, "aluminium-composite-3", ChartKind.InkOptics, ReadingWay.Hand, 1), CancellationToken.None);
        Assert.False(opaque.IsTaken);
        Assert.Contains("lets no light through", make.Make(new("long-belt-boards", "foamed-pvc-3", ChartKind.InkOptics, ReadingWay.Hand, 1), CancellationToken.None).Faults[0].Found, StringComparison.Ordinal);
    }

    private async Task<Reading<InkOpticsOutcome>> FitAsync(byte[]? text = null)
    {
        Directory.CreateDirectory(folder.Readings);
        string path = Path.Combine(folder.Readings, "optics-in.txt");
        await File.WriteAllBytesAsync(path, text ?? Text.Value);
        return await new FitInkOptics(folder, files, DemoStocks.All(), new DemoClock(0)).FitAsync(Condition, new([new(path, Behind.Unsaid)]), CancellationToken.None);
    }
}
