using System.Text.Json.Nodes;
using Laydown.Artwork.Pages;
using Laydown.Formats.Json;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Stacks;
using Xunit;

namespace Laydown.Edges.Tests.Orders;

public sealed class JsonRoundTripLawTests
{
    [Fact]
    public void An_order_comes_back_with_the_same_bytes()
    {
        byte[] bytes = LaydownJson.ToBytes(SampleRecords.Order());
        Assert.Equal(bytes, LaydownJson.ToBytes(SampleRecords.Read(bytes).Value));
    }

    [Fact]
    public void A_field_that_may_be_null_may_be_left_out()
    {
        Assert.Null(SampleRecords.Read(SampleRecords.Without("note")).Value.Note);
        Assert.Null(SampleRecords.Read(SampleRecords.Without("items", 0, "upAlongGrain")).Value.Items[0].UpAlongGrain);
        Assert.Null(SampleRecords.Read(SampleRecords.Without("items", 0, "build", "white")).Value.Items[0].Build.White);
    }

    /// <summary>Files written before a build could say more: what they do not name is as it was then.</summary>
    [Fact]
    public void A_build_of_eight_fields_still_reads_and_means_what_it_meant()
    {
        JsonNode root = JsonNode.Parse(LaydownJson.ToBytes(SampleRecords.Order()))!;
        JsonObject build = root["items"]![0]!["build"]!.AsObject();
        foreach (string name in build.Select(f => f.Key).Skip(8).ToList())
            build.Remove(name);
        Assert.Equal("clear", build.Last().Key);
        Assert.Equal(SampleRecords.Order().Items[0].Build, SampleRecords.Read(System.Text.Encoding.UTF8.GetBytes(root.ToJsonString())).Value.Items[0].Build);
    }

    [Fact]
    public void A_stack_of_eight_fields_a_layer_still_reads()
    {
        LayerStack stack = new([new(SheetFace.First, InkGroup.White, WhiteSource.Alpha, null, 1, 100, 0, false)], true, ["White."]);
        JsonObject root = JsonNode.Parse(LaydownJson.ToBytes(stack))!.AsObject();
        root.Remove("seenFrom");
        root.Remove("dayNight");
        foreach (string later in new[] { "negative", "featherMm", "minFeatureMm", "strengthCurve", "keepOutsMm" })
            Assert.True(root["layers"]![0]!.AsObject().Remove(later));
        LayerStack back = LaydownJson.Read<LayerStack>("stack.json", new MemoryStream(System.Text.Encoding.UTF8.GetBytes(root.ToJsonString()))).Value;
        Assert.Equal(LaydownJson.ToBytes(stack), LaydownJson.ToBytes(back));
    }

    [Fact]
    public void A_build_with_all_its_wishes_comes_back_with_the_same_bytes()
    {
        MaskShaping shaping = new(0.8, -0.3, [0, 40, 100], [new(10, 5, 40, 12.5)]);
        BuildWish build = new(true, false, false, WhiteSource.MaskPicture, null, 110, 0.2, true, PrintedFace.Second, SeenFrom.BothSides, BackPicture.Own, 80,
            WhiteSource.NamedSeparation, "Stop", 150, 0.4, true, true, 4, [new(SheetFace.Second, InkGroup.White, WhiteSource.Alpha, null, 1, 100, 0, true, true, -0.5, 0.25, [0, 10, 100], [new(1, 2, 3, 4)])],
            shaping, shaping with { FeatherMm = -2 }, new(KeepOutsMm: [new(0, 0, 5, 5)]));
        Order order = SampleRecords.Order();
        byte[] bytes = LaydownJson.ToBytes(order with { Items = [order.Items[0] with { Build = build }] });
        Assert.Equal(bytes, LaydownJson.ToBytes(SampleRecords.Read(bytes).Value));
        Assert.Contains("\"featherMm\": 0.8", System.Text.Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
        Assert.Contains("\"seenFrom\": \"bothSides\"", System.Text.Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void An_artwork_comes_back_with_its_format_version()
    {
        ArtworkPage page = new(1, 1, new(600, 400), new(10, 10, 580, 380), new(7, 7, 586, 386), true, 0, 0, ["DeviceN"], null, false, true, false, ["Notes"],
            [new(100, 50, new(0, 0, 10, 5), 254, "DeviceRGB", 8, null)], [new("Lato", "Type0", true)],
            [new("White", SeparationRole.White, "White", true)], [new(7, "abc", new(1, 2, 3, 4))], [new(0, new(1, 2, 3, 0))],
            [new([new(0, 0), new(-5, 3.25)], true, "Cutting")], 310, new(1, 1, 1, 1), [new("EAN-13", "4006381333931", new(1, 2, 3, 4), 0.33, 11)]);
        ArtworkFile file = new("a.pdf", ArtworkKind.Pdf, 5_000_000_000, new string('a', 64), "1.6", null, [page]);

        byte[] bytes = LaydownJson.ToBytes(file);
        ArtworkFile back = LaydownJson.Read<ArtworkFile>("a.json", new MemoryStream(bytes)).Value;
        Assert.Equal("1.6", back.Version);
        Assert.Equal(new SizeMm(600, 400), back.Pages[0].MediaMm);
        Assert.Equal(bytes, LaydownJson.ToBytes(back));
    }

    [Fact]
    public void A_run_comes_back_with_sizes_gap_and_money()
    {
        Figure figure = new("time for one sheet", 87.8, "s", "27 scans × 2.77 s + 13 s", "demo data");
        Run run = new("R-20261201-01", "long-belt", "long-belt-boards", "fluted-5",
            new LayerStack([new(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false)], false, ["Opaque sheet: colour on the first surface."]),
            new ModeChoice("everyday", ["Viewed from 2 m."], [new("fine", "Slower.")]), [new("TW-9-1", "TW-9", "A board", 4, new(2026, 12, 4))],
            [new(new(1220, 2440), 5, [new("TW-9-1", 1, new(5, 5, 606, 406), false), new("TW-9-1", 2, new(5, 500, 606, 406), true, new(0, 0, 10, 10))], 2, [new(0, 1000, 1220, 1440)])],
            new BeltPlace(2600, 2440, 1220, true, [new(1, 20, 2440, 2)], ["A"], ["F"], 12.5, "pins"),
            new RunTime(11, 8.2, 1.1, 27, [figure]), [new(Press.Inks.InkRole.White, ["W1", "W2"], 12.345, 2.8, 41)],
            new SetUp(1.5, 5.6, HeadGap.FromMm(7.1), ["thickness"], 80, 400, 3, "Zones A to E", [], ["Upright along the flutes"], ["UV light"], [figure]),
            new Plan.Costs.CostSheet([new("Stock", new(1234), "2 × 6.17", null)], new(1234), new(271), new(585), new(2090), [new("TW-9-1", 4, new(2090))]),
            new(2026, 12, 4));

        byte[] bytes = LaydownJson.ToBytes(run);
        Run back = LaydownJson.Read<Run>("run.json", new MemoryStream(bytes)).Value;
        Assert.Equal(7.1, back.SetUp.HeadGap.Mm);
        Assert.Equal(new SizeMm(1220, 2440), back.Sheets[0].Sheet);
        Assert.Equal(new RectMm(0, 0, 10, 10), back.Sheets[0].Placements[1].Part);
        Assert.Equal(new Money(2090), back.Cost.Price);
        Assert.Equal(bytes, LaydownJson.ToBytes(back));
        Assert.Contains("\"price\": {\n      \"cents\": 2090\n    }", System.Text.Encoding.UTF8.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_result_carries_its_schema_and_version_first()
    {
        using MemoryStream stream = new();
        LaydownJson.WriteResult(stream, "laydown/check-result", 3, new { Findings = new[] { 1, 2 } });
        Assert.StartsWith("{\n  \"schema\": \"laydown/check-result\",\n  \"version\": 3,\n  \"findings\": [", System.Text.Encoding.UTF8.GetString(stream.ToArray()), StringComparison.Ordinal);
    }

    [Fact]
    public void The_kinds_of_finishing_are_written_as_words() =>
        Assert.Contains("\"kind\": \"cutSquare\"", System.Text.Encoding.UTF8.GetString(LaydownJson.ToBytes(SampleRecords.Order())), StringComparison.Ordinal);
}
