using Laydown.Artwork.Checks;
using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Core.Tests.Artwork;

/// <summary>A faultless page of 600 × 400 mm with 3 mm bleed, to be spoilt one thing at a time.</summary>
internal static class Sample
{
    public static CheckWish Wish { get; } = new(new(600, 400), 3, 1, 1, 720, 720, 360, 240, false, null, false, false, false);

    public static ArtworkPage Page { get; } = new(
        1, 1, new(606, 406), new(3, 3, 600, 400), new(0, 0, 606, 406), true, 0, 0, ["ICCBased(4)"], "some profile", false, false, false,
        [], [], [], [], [], [], [], null, null, []);

    public static PlacedImage Image { get; } = new(2362, 1575, new(3, 3, 600, 400), 100, "ICCBased(3)", 8, null);

    public static CodeUse Code { get; } = new("EAN-13", "7300011000017", new(10, 10, 40, 25), 9 * 25.4 / 720, 11);

    public static CutPath Cut { get; } = new([new(10, 10), new(200, 10), new(200, 200), new(10, 200)], true, "Cutting");

    public static NamedSeparation Separation(string name, SeparationRole role, string? step = null, bool? overprints = true) => new(name, role, step, overprints);

    public static ArtworkFile Of(params IReadOnlyList<ArtworkPage> pages) =>
        new("sample.pdf", ArtworkKind.Pdf, 100_000, new string('0', 64), "1.6", null, pages);

    /// <summary>Codes of the findings of one page, each once, in order.</summary>
    public static IReadOnlyList<string> Codes(ArtworkPage page, CheckWish? wish = null) => Codes(Of(page), wish);

    public static IReadOnlyList<string> Codes(ArtworkFile file, CheckWish? wish = null) =>
        [.. ArtworkChecks.Run(file, wish ?? Wish).Select(f => f.Code).Distinct()];

    public static Finding Only(ArtworkPage page, string code, CheckWish? wish = null) => Only(Of(page), code, wish);

    public static Finding Only(ArtworkFile file, string code, CheckWish? wish = null) =>
        Assert.Single(ArtworkChecks.Run(file, wish ?? Wish), f => f.Code == code);
}
