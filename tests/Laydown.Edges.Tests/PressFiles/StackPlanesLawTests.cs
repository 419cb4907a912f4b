using Laydown.Measures;
using Laydown.Plan.Build;
using Laydown.Plan.Orders;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Orders;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>From a wish to the pixels of its press files: every plane holds what its layer says, where the one it is meant for sees it.</summary>
public sealed class StackPlanesLawTests
{
    private const int Ppi = 100, Width = 100, Height = 40, Left = 30, SheetWidth = 200;

    private static readonly BuildWish Plain = new(false, false, false, WhiteSource.Flood, null, 100, 0, false);

    private static readonly BuildWish BothSides = Plain with { SeenFrom = SeenFrom.BothSides, Back = BackPicture.Own, BlockOut = WhiteSource.Flood };

    private static readonly double[] Curve = [0, 20, 70, 70, 100];

    // Columns 20 to 39, rows 15 to 34 from above.
    private static readonly RectMm KeptOut = new(5.08, 1.27, 5.08, 5.08);

    public static TheoryData<string> Wishes() =>
        ["both sides on one face", "both sides on second", "both sides on both faces", "both sides of opaque", "same picture", "window", "white in the dark", "lamp window", "night apart", "named, negative", "curve and places kept out", "clear with a place kept out"];

    [Theory, MemberData(nameof(Wishes))]
    public async Task Every_plane_of_a_derived_stack_holds_what_its_layer_says(string name)
    {
        (BuildWish wish, SheetLight light) = Of(name);
        PrintCondition condition = World.Condition(400, light: false);
        Stock sheet = World.Board(50.8, 25.4, light);
        LayerStack stack = StackBuilder.Derive(wish, sheet, World.Press, World.Inks).Value;
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 25.4, 10.16, stack.Layers) with { Stack = stack };
        await bench.MakeAsync(new Painter(bench.Pages, Paint, wish.WhiteSeparation is null ? [] : ["Stop"]), World.Run(new(50.8, 25.4), [item], [World.Whole(item, 7.62, 5.08)], condition, Ppi, stack));

        foreach ((int number, Layer layer) in stack.Layers.Index())
            Holds(bench, stack, number, layer);
    }

    private static (BuildWish Wish, SheetLight Light) Of(string name) => name switch
    {
        "both sides on one face" => (BothSides, SheetLight.Clear),
        "both sides on second" => (BothSides with { Printed = PrintedFace.Second }, SheetLight.Clear),
        "both sides on both faces" => (BothSides with { Printed = PrintedFace.Both, White = WhiteSource.UnderImage }, SheetLight.Clear),
        "both sides of opaque" => (BothSides, SheetLight.Opaque),
        "same picture" => (Plain with { SeenThroughSheet = true, Lit = true, Back = BackPicture.Same, BackPercent = 60, WhitePercent = 70 }, SheetLight.Clear),
        "window" => (Plain with { Lit = true, White = WhiteSource.MaskPicture, WhiteNegative = true }, SheetLight.Clear),
        "white in the dark" => (Plain with { Lit = true, White = WhiteSource.MaskPicture, WhitePercent = 150 }, SheetLight.Opal),
        "lamp window" => (Plain with { Lit = true, BlockOut = WhiteSource.MaskPicture, BlockOutNegative = true, BlockOutPercent = 80 }, SheetLight.Clear),
        "night apart" => (Plain with { Lit = true, DayNight = true, Printed = PrintedFace.Both }, SheetLight.Clear),
        "curve and places kept out" => (Plain with { Lit = true, White = WhiteSource.MaskPicture, WhitePercent = 90, WhiteShaping = new(0, 0, Curve, [KeptOut]) }, SheetLight.Clear),
        "clear with a place kept out" => (Plain with { Clear = true, ClearShaping = new(KeepOutsMm: [KeptOut]) }, SheetLight.Opaque),
        _ => (Plain with { Lit = true, White = WhiteSource.NamedSeparation, WhiteSeparation = "Stop", WhiteNegative = true }, SheetLight.Clear),
    };

    // Bare in part, speckle in part; the named plate a ramp. What no layer asks for must be bare, or the run is refused.
    private static byte Paint(string page, string plate, int x, int y, int width, int height) =>
        plate == "Stop" ? page.EndsWith('1') ? (byte)(2 * x) : (byte)0
        : x < 20 && y < 20 ? (byte)0
        : Painter.Noise(page, plate, x, y);

    private static void Holds(Bench bench, LayerStack stack, int number, Layer layer)
    {
        string group = layer.Group switch { InkGroup.BlockOut => "block-out", _ => layer.Group.ToString().ToLowerInvariant() };
        (byte[] pixels, int width, int height, int bands) = Bench.Vips(bench.InRun(Invariant($"sheet-01-layer-{number + 1}-{group}.tif")));
        Assert.Equal(SheetWidth, width);
        Assert.Equal(layer.Group == InkGroup.Colour ? 4 : 1, bands);

        // Drawings are seen from the face printed first; from the other, left is right.
        int left = layer.Face == stack.Layers[0].Face ? Left : SheetWidth - Left - Width, top = height - 20 - Height;
        for (int y = 0; y < Height; y++)
        {
            for (int x = 0; x < Width; x++)
            {
                int seen = layer.Mirrored ? Width - 1 - x : x;
                for (int ink = 0; ink < bands; ink++)
                    Assert.InRange(Wanted(layer, ink, seen, y) - pixels[((((top + y) * width) + left + x) * bands) + ink], -1.5, 1.5);
            }
        }

        Assert.Equal(0, pixels.Where((_, i) => i / bands / width < top || i / bands % width < left || i / bands % width >= left + Width).Sum(p => p));
    }

    private static double Wanted(Layer layer, int ink, int x, int y)
    {
        string[] plates = ["Cyan", "Magenta", "Yellow", "Black"];
        double Plate(string plate) => Paint("T-1-1#" + layer.ArtworkPage, plate, x, y, Width, Height);
        double light = (1 - (Plate("Black") / 255)) * (1 - (((0.2126 * Plate("Cyan")) + (0.7152 * Plate("Magenta")) + (0.0722 * Plate("Yellow"))) / 255));
        double mask = layer.Source switch
        {
            null => Plate(plates[ink]),
            WhiteSource.Flood => 255,
            WhiteSource.UnderImage => plates.Any(p => Plate(p) > 2.04) ? 255 : 0,
            WhiteSource.MaskPicture => 255 * (1 - light),
            _ => Plate("Stop"),
        };
        mask = layer.Negative ? 255 - mask : mask;
        if (layer.KeepOutsMm is not null && x is >= 20 and < 40 && y is >= 15 and < 35)
            return 0;
        double step = mask / 255 * (Curve.Length - 1);
        int below = Math.Min((int)step, Curve.Length - 2);
        double curved = Curve[below] + ((step - below) * (Curve[below + 1] - Curve[below]));
        return (layer.StrengthCurve is null ? mask : curved * 2.55) * layer.StrengthPercent / 100;
    }

    /// <summary>Page 1 is dark on its left half, page 2 on its left quarter: on whichever face they lie, each viewer finds his picture so.</summary>
    [Theory]
    [InlineData(PrintedFace.First)]
    [InlineData(PrintedFace.Second)]
    [InlineData(PrintedFace.Both)]
    public async Task Each_viewer_has_a_preview_in_which_his_picture_reads_right(PrintedFace printed)
    {
        LayerStack stack = StackBuilder.Derive(BothSides with { Printed = printed }, World.Board(50.8, 25.4, SheetLight.Clear), World.Press, World.Inks).Value;
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 25.4, 10.16, stack.Layers) with { Stack = stack };
        Painter painter = new(bench.Pages, (page, plate, x, _, width, _) => plate == "Black" && x < (page.EndsWith('1') ? width / 2 : width / 4) ? (byte)255 : (byte)0);
        Laydown.Shop.Run.RunContext run = World.Run(new(50.8, 25.4), [item], [World.Whole(item, 7.62, 5.08)], World.Condition(400, light: false), Ppi, stack);
        await bench.MakeAsync(painter, run with { Stock = World.Board(50.8, 25.4, SheetLight.Clear) });

        // Drawings are seen from the face printed first; for the viewer on the other side, left is right.
        int left = stack.Layers[0].Face == SheetFace.First ? Left : SheetWidth - Left - Width;
        Dark(bench.InRun("sheet-01-preview.png"), left, Width / 2);
        Dark(bench.InRun("sheet-01-back.png"), SheetWidth - left - Width, Width / 4);
    }

    private static void Dark(string png, int left, int dark)
    {
        (byte[] pixels, int width, int height, int bands) = Bench.Vips(png);
        int row = height - 40;
        int Light(int x) => pixels[((row * width) + left + x) * bands];
        int black = Light(5), white = Light(Width - 5);
        Assert.True(white - black > 60, Invariant($"{black}, {white}"));
        Assert.All(Enumerable.Range(2, dark - 4), x => Assert.InRange(Light(x), black - 3, black + 3));
        Assert.All(Enumerable.Range(dark + 2, Width - dark - 4), x => Assert.InRange(Light(x), white - 3, white + 3));
    }

    [Fact]
    public async Task A_choke_of_a_negative_draws_its_ink_in_and_widens_the_window()
    {
        using Bench bench = new();
        Layer white = World.White(WhiteSource.NamedSeparation, choke: 1.27, separation: "Stop") with { Negative = true };
        ItemRecord item = World.Item("T-1-1", 25.4, 10.16, [white, World.Colour]);
        await bench.MakeAsync(
            new Painter(bench.Pages, (_, plate, x, _, _, _) => plate == "Stop" && x is >= 40 and < 60 ? (byte)255 : (byte)0, ["Stop"]),
            World.Run(new(50.8, 25.4), [item], [World.Whole(item, 7.62, 5.08)], World.Condition(400, light: false), Ppi));
        (byte[] pixels, int width, int height, _) = Bench.Vips(bench.InRun("sheet-01-layer-1-white.tif"));
        byte[] row = pixels[((height - 40) * width)..((height - 39) * width)];

        // The window of 20 pixels grows by 1.27 mm, 5 pixels at 100 ppi, on either side.
        Assert.Equal(Enumerable.Range(0, Width).Select(x => x is >= 35 and < 65 ? 0 : 255), row[Left..(Left + Width)].Select(v => (int)v));
    }

    [Fact]
    public async Task Block_out_is_black_alone_and_holds_the_limit_of_black()
    {
        using Bench bench = new();
        PrintCondition plain = World.Condition(400, light: false);
        PrintCondition condition = plain with { Inks = [.. plain.Inks.Select(i => i.Role == InkRole.Black ? i with { LimitPercent = 95 } : i)] };
        Layer blockOut = World.White(WhiteSource.Flood) with { Group = InkGroup.BlockOut };
        ItemRecord item = World.Item("T-1-1", 25.4, 10.16, [blockOut, World.White(WhiteSource.Flood), World.Colour]);
        await bench.MakeAsync(
            new Painter(bench.Pages, (_, _, _, _, _, _) => 90), World.Run(new(50.8, 25.4), [item], [World.Whole(item, 7.62, 5.08)], condition, Ppi));
        string file = bench.InRun("sheet-01-layer-1-block-out.tif");
        (byte[] pixels, _, _, int bands) = Bench.Vips(file);
        Assert.Equal(1, bands);
        Assert.Equal(Width * Height, pixels.Count(p => p == (int)(0.95 * 255)));
        Assert.Equal((SheetWidth * 100) - (Width * Height), pixels.Count(p => p == 0));
        Assert.Contains("Black", Bench.Tool("tiffinfo", file), StringComparison.Ordinal);
    }
}

public sealed class StackPlanesRefusalTests
{
    [Theory]
    [InlineData(WhiteSource.Flood)]
    [InlineData(WhiteSource.UnderImage)]
    [InlineData(WhiteSource.Inverse)]
    public async Task A_negative_of_what_is_no_mask_is_refused(WhiteSource source)
    {
        using Bench bench = new();
        ItemRecord item = World.Item("T-1-1", 25.4, 10.16, [World.White(source) with { Negative = true }, World.Colour]);
        Reading<IReadOnlyList<Laydown.Shop.Run.ManifestEntry>> made = await bench.Maker(new Painter(bench.Pages, (_, _, _, _, _, _) => 7)).MakeAsync(
            World.Run(new(50.8, 25.4), [item], [World.Whole(item, 7.62, 5.08)]), bench.Runs, new Listener(), CancellationToken.None);
        InputFault fault = Assert.Single(made.Faults);
        Assert.Equal(("T-1-1.pdf", 1, "Negative"), (fault.File, fault.Page, fault.Field));
        Assert.Contains(source.ToString(), fault.Found, StringComparison.Ordinal);
    }
}
