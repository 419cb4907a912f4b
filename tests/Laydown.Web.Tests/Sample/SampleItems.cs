using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Press.Stacks;
using Laydown.Shop.Orders;

namespace Laydown.Web.Tests.Sample;

/// <summary>Orders of the invented Saltmarsh Observatory: ready, with warnings, held back by a finding, held back by a file.</summary>
internal static class SampleItems
{
    private static readonly BuildWish Plain = new(false, false, false, null, null, 0, 0, false);
    private static readonly BuildWish DayNight = new(true, true, true, WhiteSource.Flood, null, 100, 0, false);

    // Written out by hand: white over the picture, of which the page warns.
    private static readonly LayerStack WrongWayRound = new(
        [new(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false), new(SheetFace.First, InkGroup.White, WhiteSource.Flood, null, 1, 100, 0, false)],
        false, ["The layers were written out by hand and are taken as they stand; their order is checked."]);

    private static readonly LayerStack Panel = new(
        [
            new(SheetFace.Second, InkGroup.Colour, null, null, 1, 100, 0, true), new(SheetFace.Second, InkGroup.White, WhiteSource.Flood, null, 1, 100, 0, true),
            new(SheetFace.Second, InkGroup.Colour, null, null, 2, 100, 0, true),
        ], true, ["The picture is looked at through the sheet: it is printed mirrored on the second surface."], DayNight: true);

    public static IReadOnlyList<ItemRecord> All(string folder) =>
    [
        Ready(folder, "TW-1041-1", "Trail sign, reed bed", 600, 400, 12, "fluted-5", Plain, 1, SampleFindings()),
        Ready(folder, "TW-1041-2", "Trail sign, otter crossing", 600, 400, 8, "fluted-5", Plain, 1, []) with { Stack = WrongWayRound },
        Ready(folder, "TW-1042-1", "Day and night panel, estuary", 1200, 800, 2, "acrylic-clear-5", DayNight, 3, SampleFindings()[3..]) with { Stack = Panel },
        Ready(folder, "TW-1043-1", "Shelf cards", 480, 640, 40, "foam-blank", Plain, 5, []),
        Held(folder, "TW-1044-1", "Hide poster, curlew", 2,
            [new("image-ppi", Severity.Stop, 1, new(40, 60, 320, 200), "The picture is too coarse for its viewing distance.", "31 ppi", "at least 58 ppi", "Ask for a larger picture.", "common practice, no source")]),
        Refused(folder, "TW-1045-1", "Donation board", 0),
    ];

    private static Finding[] SampleFindings() =>
    [
        new("bleed-missing", Severity.Warn, 1, new(0, 0, 600, 400), "The page has no bleed.", "0 mm", "3 mm on each side", "Mirror the edge outward by 3 mm.", "common practice, no source"),
        new("thin-line", Severity.Warn, 1, new(420, 300, 120, 1), "A line is thinner than the mode can hold.", "0.05 mm", "at least 0.14 mm", "Draw it at 0.14 mm.", "common practice, no source"),
        new("small-text", Severity.Note, 1, new(60, 40, 180, 6), "Text near the limit of legibility from 2 m.", "17 pt", "at least 16 pt", null, "common practice, no source"),
        new("rgb-picture", Severity.Note, 1, new(200, 120, 200, 140), "A picture in RGB is turned into the press's inks.", "DeviceRGB", "a profile in the file", "Take it as sRGB.", "common practice, no source"),
        new("file-name", Severity.Note, null, null, "The file names no output condition.", "none", "a named condition", null, "common practice, no source"),
    ];

    private static ItemRecord Ready(string folder, string id, string title, double width, double height, int count, string stock, BuildWish build, int dueIn, Finding[] findings) =>
        new(Line(id, title, width, height, count, stock, build, dueIn), id[..7], "Saltmarsh Observatory", ItemState.Ready, Path.Combine(folder, "orders", id[..7], id + ".pdf"),
            File(id, width, height, build.DayNight ? 2 : 1), [], findings, null, null);

    private static ItemRecord Held(string folder, string id, string title, int dueIn, Finding[] findings) =>
        new(Line(id, title, 841, 1189, 3, "foamed-pvc-3", Plain, dueIn), id[..7], "Saltmarsh Observatory", ItemState.Stopped, Path.Combine(folder, "orders", id[..7], id + ".pdf"),
            File(id, 841, 1189, 1), [], findings, null, null);

    private static ItemRecord Refused(string folder, string id, string title, int dueIn) =>
        new(Line(id, title, 900, 600, 1, "foamed-pvc-3", Plain, dueIn), id[..7], "Saltmarsh Observatory", ItemState.Stopped, Path.Combine(folder, "orders", id[..7], id + ".pdf"),
            null, [new(id + ".pdf", null, "trailer", "a file cut short after 1204 bytes", "a whole PDF")], [], null, null);

    private static Item Line(string id, string title, double width, double height, int count, string stock, BuildWish build, int dueIn) =>
        new(id, title, id + ".pdf", width, height, 3, count, stock, build, [new(FinishingKind.CutSquare, 1), new(FinishingKind.Pack, 1)],
            SampleShop.Today.AddDays(dueIn), 2, 1, null);

    private static ArtworkFile File(string id, double width, double height, int pages) => new(
        id + ".pdf", ArtworkKind.Pdf, 1_482_003, Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(id))), "1.6", null,
        [.. Enumerable.Range(1, pages).Select(n => new ArtworkPage(
            n, 1, new(width, height), new(0, 0, width, height), new(0, 0, width, height), n == 1, 0, 0, ["DeviceRGB", "Separation"], "sRGB", false, true, false, [],
            [new(1800, 1200, new(0, 0, width, height), 76.2, "DeviceRGB", 8, null)], [new("B612-Bold", "TrueType", true)],
            [new("White", SeparationRole.White, "White", true), new("Cut", SeparationRole.Cut, "Structural/Cutting", true)],
            [new(17, "Keep to the boards", new(60, 40, 180, 6))], [new(0.05, new(420, 300, 120, 1))], [], 212, new(10, 10, 5, 5),
            [new("QR", "https://example.org/reed-bed", new(500, 40, 60, 60), 2.1, 4)]))]);
}
