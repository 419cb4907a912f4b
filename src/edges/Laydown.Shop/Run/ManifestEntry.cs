using System.Text.Json.Serialization;

namespace Laydown.Shop.Run;

/// <summary>One file of a run folder.</summary>
/// <param name="Name">File name, without folder.</param>
/// <param name="What">
/// What it is: <c>contone</c>, <c>dots</c>, <c>preview</c>, <c>lit-preview</c>, <c>back-preview</c>, <c>cut</c>, <c>layout</c>, <c>set-up</c>, <c>run</c>.
/// </param>
/// <param name="Bytes">Length.</param>
/// <param name="Sha256">SHA-256, lower-case hex.</param>
public sealed record ManifestEntry(string Name, string What, long Bytes, string Sha256)
{
    /// <summary>Sheet from 1, for press files.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Sheet { get; init; }

    /// <summary>Layer from 1, for press files.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Layer { get; init; }

    /// <summary>Name of the ink, for dots.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Ink { get; init; }

    /// <summary>Bits of a dot, for dots: 1, or 2.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? Bits { get; init; }

    /// <summary>Dots per inch across the scan, for dots.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? DpiScan { get; init; }

    /// <summary>Dots per inch along the feed, for dots.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? DpiFeed { get; init; }

    /// <summary>Ink of one such sheet, counted from its dots, ml.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? Ml { get; init; }
}
