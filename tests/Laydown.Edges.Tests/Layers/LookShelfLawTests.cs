using System.Text.Json;
using Laydown.Edges.Tests.Store;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Orders;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

public sealed class LookShelfLawTests : IDisposable
{
    private readonly TempFolder temp = new();

    private ShopFolder Folder => new(temp.Path);

    private LookShelf Shelf => new(Folder);

    public void Dispose() => temp.Dispose();

    [Fact]
    public async Task What_was_published_is_read_back_the_same()
    {
        LookRecord kept = await LookSamples.PutAsync(Shelf, LookSamples.Record("X-1", 7, 5));
        LookRecord read = Shelf.Find("X-1", kept.LookId).Value;
        Assert.Equal(JsonSerializer.Serialize(kept, ShopJson.Readable), JsonSerializer.Serialize(read, ShopJson.Readable));
        Assert.Equal(LookSamples.Planes(kept), await File.ReadAllBytesAsync(Path.Combine(Shelf.FolderOf("X-1", kept.LookId), LookRecord.PlanesFile), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Looks_are_numbered_from_one_and_listed_in_that_order()
    {
        for (int i = 0; i < 11; i++)
            await LookSamples.PutAsync(Shelf, LookSamples.Record("X-1", 2, 2));
        Assert.Equal(Enumerable.Range(1, 11).Select(i => Invariant($"L-{i}")), Shelf.List("X-1").Select(l => l.LookId));
        Assert.Empty(Shelf.List("X-2"));
    }

    [Fact]
    public void A_draft_that_is_not_published_leaves_nothing()
    {
        using (LookDraft draft = Shelf.Begin("X-1"))
            File.WriteAllText(draft.File("planes.raw"), "half");
        Assert.Empty(Directory.EnumerateFileSystemEntries(Path.Combine(Folder.Looks, "X-1")));
    }

    [Fact]
    public async Task What_a_killed_maker_left_is_swept_and_what_a_living_one_writes_is_let_alone()
    {
        using LookDraft living = Shelf.Begin("X-1");
        string dead = Path.Combine(Folder.Looks, "X-1", ".dead.part");
        Directory.CreateDirectory(dead);
        await File.WriteAllTextAsync(Path.Combine(dead, "planes.raw"), "half", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(dead + ".lock", "", TestContext.Current.CancellationToken);
        Shelf.Sweep();
        Assert.False(Directory.Exists(dead));
        Assert.False(File.Exists(dead + ".lock"));
        Assert.True(Directory.Exists(living.FolderPath));
        Assert.Empty(Shelf.List("X-1"));
    }

    [Fact]
    public async Task Small_planes_are_the_means_of_what_they_cover()
    {
        LookRecord kept = await LookSamples.PutAsync(Shelf, LookSamples.Record("X-1", 6, 4));
        byte[] whole = LookSamples.Planes(kept);
        using LookPlanes planes = new(kept, Shelf.FolderOf("X-1", kept.LookId));
        byte[] small = planes.Reduced(3, 2, TestContext.Current.CancellationToken);
        for (int plane = 0; plane < planes.Count; plane++)
        {
            for (int y = 0; y < 2; y++)
            {
                for (int x = 0; x < 3; x++)
                {
                    int sum = 0;
                    for (int i = 0; i < 4; i++)
                        sum += whole[(((plane * 4) + (2 * y) + (i / 2)) * 6) + (2 * x) + (i % 2)];
                    Assert.Equal((sum + 2) / 4, small[(((plane * 2) + y) * 3) + x]);
                }
            }
        }
    }

    [Fact]
    public void An_item_kept_before_there_were_looks_still_opens()
    {
        const string Old = """{"item":null,"orderId":"X","customer":"C","state":"ready","artworkPath":"","artwork":null,"faults":[],"findings":[],"stack":null,"runId":null}""";
        Assert.Null(JsonSerializer.Deserialize<ItemRecord>(Old, ShopJson.Compact)!.LookId);
    }
}
