using Laydown.Artwork.Pages;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop.Artwork;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Artwork as large as its item; a triangle is cut out of that of its name.</summary>
internal sealed class SizedReader(IReadOnlyList<Item> items) : IArtworkReader
{
    private readonly ShopBench.FakeReader plain = new();
    private int next;

    public async Task<Reading<ArtworkFile>> ReadAsync(string path, CancellationToken cancellation)
    {
        Reading<ArtworkFile> read = await plain.ReadAsync(path, cancellation);
        Item item = items[next++ % items.Count];
        (double w, double h, double b) = (item.WidthMm, item.HeightMm, item.BleedMm);
        CutPath[] cuts = path.Contains("triangle", StringComparison.Ordinal) ? [new([new(b, b), new(b + w, b), new(b, b + h)], true, "Cutting")] : [];
        return read.Then(f => Reading.Of(f with
        {
            Pages = [f.Pages[0] with { MediaMm = new(w + (2 * b), h + (2 * b)), TrimMm = new(b, b, w, h), BleedMm = new(0, 0, w + (2 * b), h + (2 * b)), CutPaths = cuts }],
        }));
    }
}
