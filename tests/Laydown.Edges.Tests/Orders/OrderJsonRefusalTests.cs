using System.Text;
using System.Text.Json.Nodes;
using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Xunit;

namespace Laydown.Edges.Tests.Orders;

public sealed class OrderJsonRefusalTests
{
    [Theory]
    [InlineData("widthMm", "-600", "-600", "over 0")]
    [InlineData("heightMm", "0", "0", "over 0")]
    [InlineData("widthMm", "100001", "100001", "at most 100000")]
    [InlineData("quantity", "0", "0", "at least 1")]
    [InlineData("quantity", "100001", "100001", "at most 100000")]
    [InlineData("quantity", "2.5", "2.5", "a whole number")]
    [InlineData("quantity", "\"4\"", "\"4\"", "a whole number")]
    [InlineData("artwork", "\"../board.pdf\"", "\"../board.pdf\"", "a file name without folder")]
    [InlineData("artwork", "\"art/board.pdf\"", "\"art/board.pdf\"", "a file name without folder")]
    [InlineData("artwork", "\"art\\\\board.pdf\"", "\"art\\\\board.pdf\"", "a file name without folder")]
    [InlineData("artwork", "\"..\"", "\"..\"", "a file name without folder")]
    [InlineData("artwork", "\"\"", "\"\"", "a file name without folder")]
    [InlineData("due", "\"2026-02-30\"", "\"2026-02-30\"", "a day such as 2026-12-01")]
    [InlineData("due", "\"tomorrow\"", "\"tomorrow\"", "a day such as 2026-12-01")]
    [InlineData("stockId", "\"Fluted 5\"", "\"Fluted 5\"", "a short name")]
    [InlineData("colour", "\"blue\"", "\"blue\"", "no such field")]
    [InlineData("bleedMm", "null", "null", "a number")]
    public void A_field_out_of_bounds_is_named_with_its_path(string field, string json, string found, string wanted)
    {
        InputFault fault = Single(SampleRecords.With(JsonNode.Parse(json), "items", 0, field));
        Assert.Equal("order.json", fault.File);
        Assert.Equal("/items/0/" + field, fault.Field);
        Assert.Equal(found == "null" ? "nothing" : found, fault.Found);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("printed", "\"left\"", "both")]
    [InlineData("seenFrom", "\"above\"", "bothSides")]
    [InlineData("back", "\"page 3\"", "own")]
    [InlineData("backPercent", "0", "over 0")]
    [InlineData("blockOut", "\"black\"", "maskPicture")]
    [InlineData("blockOutPercent", "201", "at most 200")]
    [InlineData("blockOutChokeMm", "-51", "at least -50")]
    [InlineData("whiteNegative", "\"yes\"", "true or false")]
    [InlineData("maskPage", "0", "at least 1")]
    [InlineData("whiteShaping", "{\"featherMm\":10.5}", "at most 10")]
    [InlineData("blockOutShaping", "{\"minFeatureMm\":-11}", "at least -10")]
    [InlineData("whiteShaping", "{\"strengthCurve\":[0]}", "at least 2 entries")]
    [InlineData("clearShaping", "{\"keepOutsMm\":[{\"xMm\":0,\"yMm\":0,\"widthMm\":-1,\"heightMm\":1}]}", "at least 0")]
    [InlineData("layers", "[]", "at least 1 entries")]
    [InlineData("layers", "[{\"face\":\"third\"}]", "first, second")]
    public void A_wish_for_the_build_out_of_bounds_is_named_with_its_path(string field, string json, string wanted) => Assert.Contains(
        SampleRecords.Read(SampleRecords.With(JsonNode.Parse(json), "items", 0, "build", field)).Faults,
        f => f.File == "order.json" && f.Field.StartsWith("/items/0/build/" + field, StringComparison.Ordinal) && f.Wanted.Contains(wanted, StringComparison.Ordinal));

    [Fact]
    public void A_missing_field_is_named_with_its_path()
    {
        InputFault fault = Single(SampleRecords.Without("items", 0, "quantity"));
        Assert.Equal(("/items/0/quantity", "nothing"), (fault.Field, fault.Found));
        Assert.Contains("a whole number", fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_word_is_answered_with_the_words_there_are()
    {
        InputFault fault = Single(SampleRecords.With("riveted", "items", 0, "finishing", 0, "kind"));
        Assert.Equal("/items/0/finishing/0/kind", fault.Field);
        Assert.Contains("cutContour", fault.Wanted, StringComparison.Ordinal);
    }

    [Fact]
    public void An_enum_as_a_number_is_refused() =>
        Assert.Equal("/items/0/finishing/0/kind", Single(SampleRecords.With(2, "items", 0, "finishing", 0, "kind")).Field);

    [Fact]
    public void An_order_without_items_is_refused() => Assert.Equal("/items", Single(SampleRecords.With(new JsonArray(), "items")).Field);

    [Fact]
    public void Every_fault_is_told_at_once()
    {
        JsonNode root = JsonNode.Parse(SampleRecords.With(-1, "items", 0, "widthMm"))!;
        root["items"]![0]!["quantity"] = 0;
        root["customer"] = "";
        IReadOnlyList<InputFault> faults = SampleRecords.Read(Encoding.UTF8.GetBytes(root.ToJsonString())).Faults;
        Assert.Equal(["/customer", "/items/0/quantity", "/items/0/widthMm"], faults.Select(f => f.Field));
    }

    [Theory]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("1e400")]
    [InlineData("0x10")]
    public void A_number_that_is_none_is_named_with_its_path(string number)
    {
        string text = Encoding.UTF8.GetString(LaydownJson.ToBytes(SampleRecords.Order())).Replace("\"widthMm\": 600", $"\"widthMm\": {number}", StringComparison.Ordinal);
        Assert.Equal("/items/0/widthMm", Single(Encoding.UTF8.GetBytes(text)).Field);
    }

    [Fact]
    public void Endless_nesting_is_refused_before_anything_is_built()
    {
        string deep = new string('[', 100_000) + new string(']', 100_000);
        string text = Encoding.UTF8.GetString(LaydownJson.ToBytes(SampleRecords.Order())).Replace("\"note\": null", $"\"note\": {deep}", StringComparison.Ordinal);
        InputFault fault = Single(Encoding.UTF8.GetBytes(text));
        Assert.StartsWith("/note", fault.Field, StringComparison.Ordinal);
        Assert.Contains("levels", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_field_given_twice_is_refused()
    {
        string text = Encoding.UTF8.GetString(LaydownJson.ToBytes(SampleRecords.Order())).Replace("\"quantity\": 4", "\"quantity\": 4, \"quantity\": 400", StringComparison.Ordinal);
        InputFault fault = Single(Encoding.UTF8.GetBytes(text));
        Assert.Equal(("/items/0/quantity", "the field twice"), (fault.Field, fault.Found));
    }

    [Theory]
    [InlineData("", "file")]
    [InlineData("[]", "/")]
    [InlineData("null", "/")]
    [InlineData("{}", "/schema")]
    [InlineData("{\"schema\":\"laydown/press\",\"version\":1}", "/schema")]
    [InlineData("{\"schema\":\"laydown/order\",\"version\":2}", "/version")]
    [InlineData("{\"schema\":\"laydown/order\",", "/schema")]
    public void What_is_no_order_is_refused(string text, string field) => Assert.Equal(field, Single(Encoding.UTF8.GetBytes(text)).Field);

    [Fact]
    public void Bytes_that_are_no_text_are_refused()
    {
        byte[] bytes = LaydownJson.ToBytes(SampleRecords.Order());
        int at = Encoding.UTF8.GetString(bytes).IndexOf("Nobody", StringComparison.Ordinal);
        bytes[at] = 0xFF;
        Assert.Equal("/customer", Single(bytes).Field);
    }

    [Fact]
    public void A_very_long_text_is_refused() =>
        Assert.Equal("/customer", Single(SampleRecords.With(new string('x', 50_000), "customer")).Field);

    [Fact]
    public void A_file_that_is_not_there_is_a_fault_and_no_crash()
    {
        Reading<Order> reading = LaydownJson.ReadFile<Order>(Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N"), "order.json"));
        Assert.Equal("order.json", Assert.Single(reading.Faults).File);
    }

    [Fact]
    public void A_record_with_NaN_is_not_written()
    {
        Order order = SampleRecords.Order();
        order = order with { Items = [order.Items[0] with { WidthMm = double.NaN }] };
        Assert.Throws<ArgumentException>(() => LaydownJson.ToBytes(order));
    }

    private static InputFault Single(byte[] bytes) => Assert.Single(SampleRecords.Read(bytes).Faults);
}
