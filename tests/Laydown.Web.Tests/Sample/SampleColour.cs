using Laydown.Colour.Charts;
using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Demo.Profiles;
using Laydown.Formats.Json;
using Laydown.Intake.Colour;
using Laydown.Press.Conditions;
using Laydown.Shop;
using Laydown.Shop.Colour;

namespace Laydown.Web.Tests.Sample;

/// <summary>A print condition fitted to readings computed from the demo's own print, with a named colour in reach and one out of it; made once for all tests.</summary>
internal static class SampleColour
{
    public const string ConditionId = "long-belt-boards";
    private static readonly Lazy<IReadOnlyList<(string Path, byte[] Bytes)>> Files = new(Make);

    /// <summary>Readings of a small chart as CGATS text.</summary>
    public static byte[] Readings(ChartKind kind)
    {
        Chart chart = ChartDesign.Make(kind, [new("Cyan"), new("Magenta"), new("Yellow"), new("Black")], 260, 1).Value;
        GridlessModel model = new(DemoPrint.All[0]);
        return new ColourFiles().ReadingsText(new("sample chart", chart.InkNames, MeasuredHow.Unsaid, [.. chart.Patches.Select(p => new Patch(p.Id, p.Inks, model.Lab(p.Inks), null))]));
    }

    /// <summary>Writes everything below a shop's folder.</summary>
    public static void Write(string root)
    {
        foreach ((string path, byte[] bytes) in Files.Value)
        {
            string full = Path.Combine(root, path);
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.WriteAllBytes(full, bytes);
        }
    }

    private static IReadOnlyList<(string Path, byte[] Bytes)> Make()
    {
        ShopFolder folder = new(Directory.CreateTempSubdirectory("laydown-colour-").FullName);
        try
        {
            Laydown.Demo.Descriptions.DemoCatalogue.Write(folder.Catalogue, CancellationToken.None);
            ColourFiles files = new();
            Directory.CreateDirectory(folder.Readings);
            string chart = Path.Combine(folder.Readings, "sample-chart.txt");
            File.WriteAllBytes(chart, Readings(ChartKind.CharacteriseSmall));
            ConditionView fitted = new FitCondition(folder, files, new FixedDay())
                .FitAsync(ConditionId, chart, FitChoices.Usual with { Kind = FitKind.Neugebauer }, null, CancellationToken.None).GetAwaiter().GetResult().Value;
            _ = new CheckDrift(folder, files, new FixedDay()).CheckAsync(ConditionId, "strip.txt", Readings(ChartKind.Verify), CancellationToken.None).GetAwaiter().GetResult().Value;
            ColourLibrary library = new([new("tern-grey", "Tern grey", new(66, -1, -3), null, "a sample"), new("buoy-orange", "Buoy orange", new(64, 66, 88), null, "a sample")]);
            File.WriteAllBytes(folder.NamedColours, LaydownJson.ToBytes(library));
            string[] parts = ["catalogue/characterisations", "catalogue/readings"];
            return
            [
                .. parts.SelectMany(p => Directory.GetFiles(Path.Combine(folder.Root, p), "*", SearchOption.AllDirectories))
                    .Append(folder.NamedColours).Append(Path.Combine(folder.Catalogue, "conditions", fitted.Condition.Id + ".json"))
                    .Select(f => (Path.GetRelativePath(folder.Root, f), File.ReadAllBytes(f))),
            ];
        }
        finally
        {
            Directory.Delete(folder.Root, recursive: true);
        }
    }

    private sealed class GridlessModel(DemoPrint print)
    {
        private readonly Laydown.Colour.Inks.NeugebauerModel model = print.Model();

        public Laydown.Colour.Spaces.Lab Lab(IReadOnlyList<double> inks) =>
            Laydown.Colour.Spaces.Lab.From(model.ToXyz([.. inks]), Laydown.Colour.Spaces.WhitePoints.Pcs);
    }
}
