using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Laydown.Measures;

namespace Laydown.Shop;

/// <summary>How the shop's own records are written as JSON: camel case, enumerations by name, lengths in the unit of their name.</summary>
/// <remarks>For what the shop writes and reads back itself. Files from outside are read by the readers, which check them against their schema.</remarks>
public static class ShopJson
{
    /// <summary>One line, for the store and for content hashes.</summary>
    public static JsonSerializerOptions Compact { get; } = Make(indented: false);

    /// <summary>Indented, for people and results of commands.</summary>
    public static JsonSerializerOptions Readable { get; } = Make(indented: true);

    private static JsonSerializerOptions Make(bool indented)
    {
        JsonSerializerOptions options = new(JsonSerializerDefaults.Web)
        {
            WriteIndented = indented,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            NumberHandling = JsonNumberHandling.Strict,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.CamelCase, allowIntegerValues: false));
        options.Converters.Add(new SizeConverter());
        options.Converters.Add(new HeadGapConverter());
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private sealed record SizeForm(double WidthMm, double HeightMm);

    private sealed record GapForm(double Mm);

    // Both are structs valid by construction, so they are read through their own checks.
    private sealed class SizeConverter : JsonConverter<SizeMm>
    {
        public override SizeMm Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            SizeForm form = JsonSerializer.Deserialize<SizeForm>(ref reader, options) ?? throw new JsonException("A size: found null.");
            return new(form.WidthMm, form.HeightMm);
        }

        public override void Write(Utf8JsonWriter writer, SizeMm value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new SizeForm(value.WidthMm, value.HeightMm), options);
    }

    private sealed class HeadGapConverter : JsonConverter<HeadGap>
    {
        public override HeadGap Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
        {
            GapForm form = JsonSerializer.Deserialize<GapForm>(ref reader, options) ?? throw new JsonException("A head gap: found null.");
            return HeadGap.FromMm(form.Mm);
        }

        public override void Write(Utf8JsonWriter writer, HeadGap value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new GapForm(value.Mm), options);
    }
}
