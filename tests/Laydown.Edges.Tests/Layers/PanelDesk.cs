using Laydown.Edges.Tests.UseCases;
using Laydown.Intake.Artwork;
using Laydown.Intake.Layers;
using Laydown.Output.Layers;
using Laydown.Shop.Layers;

namespace Laydown.Edges.Tests.Looks;

/// <summary>The demo's catalogue, a store in memory and small pictures to solve.</summary>
internal sealed class PanelDesk : IDisposable
{
    private readonly PairDesk pictures = new();

    public ShopBench Shop { get; } = new();

    public LookShelf Shelf => new(Shop.Folder);

    public string Scratch => pictures.Scratch;

    public string Out => Path.Combine(Shop.Folder.Root, "panel-out");

    /// <summary>A wedge of colours by day and another at night, 48 × 32 pixels.</summary>
    public PanelRequest Request(LookWish? wish = null, double whitePercent = 100) => new(
        null, new("acrylic-clear-5", "long-belt-clear-sheets", 48 * 25.4 / 50, 32 * 25.4 / 50, 0, true, whitePercent),
        pictures.Saved("day.png", 48, 32, (x, y) => ((byte)(100 + (3 * x)), (byte)(240 - (2 * y)), (byte)(200 - x)), (image, path) => image.Pngsave(path, profile: "srgb")),
        pictures.Saved("night.png", 48, 32, (x, y) => ((byte)(2 * x), (byte)(4 * y), (byte)(180 - (3 * x))), (image, path) => image.Pngsave(path, profile: "srgb")),
        new(new("", 1, null), new("", 1, null), PairPlacing.Careful, PairPlacing.Careful, []), null, 50, wish ?? LookWish.Usual, null, null, Out, null, "a note");

    public SolvePanel Solver(int bandPixels = 1 << 15, int threads = 2) => new(
        Shop.Catalogue, Shop.Store, Shelf, new PairPictures(new IntakeLimits(Scratch)), new LookPictures(), Shop.Clock)
    { BandPixels = bandPixels, Threads = threads };

    public static byte[] Planes(StoredLook look) => File.ReadAllBytes(Path.Combine(look.Folder, LookRecord.PlanesFile));

    public void Dispose()
    {
        pictures.Dispose();
        Shop.Dispose();
    }
}
