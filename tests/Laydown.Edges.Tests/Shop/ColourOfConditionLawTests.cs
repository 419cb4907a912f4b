using Laydown.Colour.Charts;
using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Demo.Profiles;
using Laydown.Formats.Icc;
using Laydown.Intake.Colour;
using Laydown.Intake.Orders;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Colour;
using Xunit;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>A print condition's colour is saved whole or not at all.</summary>
public sealed class ColourOfConditionLawTests : IDisposable
{
    private const string Id = "long-belt-boards";
    private readonly ShopBench shop = new();
    private readonly ColourFiles files = new();

    [Fact]
    public async Task A_condition_is_fitted_made_and_taken_by_the_catalogue_again()
    {
        ConditionView fitted = await FitAsync();
        Assert.Equal(fitted.Report!.CrossValidated.Count, fitted.Condition.Characterisation!.Patches);
        MakeWish wish = new(SeparationWish.Usual with { TotalPercent = 240, LimitsPercent = [100, 100, 100, 90] }, 9);
        ConditionView made = (await new MakeCondition(shop.Folder, files).MakeAsync(Id, wish, null, CancellationToken.None)).Value;
        Assert.Equal(240, made.Condition.TotalLimitPercent);
        Assert.Equal(90, made.Condition.Inks.Single(i => i.Role == Laydown.Press.Inks.InkRole.Black).LimitPercent);
        Assert.Equal(made.Condition.Profile, made.Condition.InkProfile);

        // The catalogue takes the condition, and Little CMS its profile.
        PrintCondition taken = new CatalogueReader().Read(shop.Folder.Catalogue).Value.Conditions.Single(c => c.Id == Id);
        Assert.Equal(made.Condition.Profile, taken.Profile);
        byte[] profile = await File.ReadAllBytesAsync(Path.Combine(shop.Folder.Profiles, taken.Profile), TestContext.Current.CancellationToken);
        Assert.Empty(IccProfile.ReadCmykOutput(taken.Profile, profile).Faults);
    }

    [Fact]
    public async Task The_model_comes_back_from_its_file_bit_by_bit()
    {
        Reading<FittedPrint> print = PrintFit.Fit("chart", Chart(ChartKind.CharacteriseSmall), Plain, null, CancellationToken.None);
        string path = Path.Combine(shop.Folder.Root, "fit.json");
        await File.WriteAllBytesAsync(path, FitText.Write("chart", print.Value), TestContext.Current.CancellationToken);
        FitGrid back = FitText.Read(path).Value.Model.Grid;
        Assert.Equal(print.Value.Grid.Roots, back.Roots);
        Assert.Equal(print.Value.Grid.Curves, back.Curves);
        Assert.Equal(print.Value.Grid.InkNames, back.InkNames);
    }

    [Fact]
    public async Task A_refused_or_cancelled_fit_changes_nothing()
    {
        string file = Path.Combine(shop.Folder.Catalogue, "conditions", Id + ".json");
        byte[] before = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        string bad = Path.Combine(shop.Folder.Root, "bad.csv");
        await File.WriteAllTextAsync(bad, "C,M,Y,K,L,a,b\n0,0,0,0,95,0,0\n100,0,0,0,55,-36,-50\n", TestContext.Current.CancellationToken);
        FitCondition fit = new(shop.Folder, files, shop.Clock);
        Assert.False((await fit.FitAsync(Id, bad, Plain, null, CancellationToken.None)).IsTaken);
        Assert.False((await fit.FitAsync("none", bad, Plain, null, CancellationToken.None)).IsTaken);
        using CancellationTokenSource over = new();
        await over.CancelAsync();
        string chart = await ChartFileAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => fit.FitAsync(Id, chart, Plain, null, over.Token));
        Assert.Equal(before, await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken));
        Assert.False(Directory.Exists(shop.Folder.Characterisations));
    }

    [Fact]
    public async Task Limits_that_leave_no_gamut_are_refused_and_the_condition_stays()
    {
        await FitAsync();
        string file = Path.Combine(shop.Folder.Catalogue, "conditions", Id + ".json");
        byte[] before = await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken);
        int profiles = Directory.GetFiles(shop.Folder.Profiles).Length;
        MakeCondition make = new(shop.Folder, files);
        MakeWish[] wishes =
        [
            new(SeparationWish.Usual with { TotalPercent = 4, LimitsPercent = [1, 1, 1, 1] }, 9), new(SeparationWish.Usual with { LimitsPercent = [100, 100] }, 9),
            new(SeparationWish.Usual with { TotalPercent = double.NaN }, 9), new(SeparationWish.Usual, 10),
        ];
        foreach (MakeWish wish in wishes)
            Assert.False((await make.MakeAsync(Id, wish, null, CancellationToken.None)).IsTaken);
        Assert.Equal(before, await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken));
        Assert.Equal(profiles, Directory.GetFiles(shop.Folder.Profiles).Length);
    }

    [Fact]
    public async Task A_condition_that_was_never_fitted_predicts_nothing()
    {
        Reading<KeptReading> drift = await new CheckDrift(shop.Folder, files, shop.Clock).CheckAsync(
            Id, "strip.txt", files.ReadingsText(Chart(ChartKind.Verify)), CancellationToken.None);
        Assert.Equal("/characterisation", drift.Faults[0].Field);
        Assert.False(Directory.Exists(shop.Folder.Characterisations));
    }

    public void Dispose() => shop.Dispose();

    private static FitChoices Plain => FitChoices.Usual with { Kind = FitKind.Neugebauer };

    private async Task<ConditionView> FitAsync() =>
        (await new FitCondition(shop.Folder, files, shop.Clock).FitAsync(Id, await ChartFileAsync(), Plain, null, CancellationToken.None)).Value;

    private async Task<string> ChartFileAsync()
    {
        string path = Path.Combine(shop.Folder.Root, "chart.txt");
        await File.WriteAllBytesAsync(path, files.ReadingsText(Chart(ChartKind.CharacteriseSmall)));
        return path;
    }

    private static ReadingSet Chart(ChartKind kind)
    {
        Chart chart = ChartDesign.Make(kind, [new("Cyan"), new("Magenta"), new("Yellow"), new("Black")], 260, 1).Value;
        Laydown.Colour.Inks.NeugebauerModel model = DemoPrint.All[0].Model();
        return new("chart", chart.InkNames, MeasuredHow.Unsaid,
            [.. chart.Patches.Select(p => new Patch(p.Id, p.Inks, Lab.From(model.ToXyz([.. p.Inks]), WhitePoints.Pcs), null))]);
    }
}
