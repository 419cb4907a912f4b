using Laydown.Edges.Tests.Store;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Xunit;

namespace Laydown.Edges.Tests.Looks;

public sealed class LookRefusalTests : IDisposable
{
    private readonly TempFolder temp = new();

    private LookShelf Shelf => new(new ShopFolder(temp.Path));

    public void Dispose() => temp.Dispose();

    [Theory]
    [InlineData("X-1", "L-0")]
    [InlineData("X-1", "L-01")]
    [InlineData("X-1", "../L-1")]
    [InlineData("../X-1", "L-1")]
    [InlineData(".X", "L-1")]
    [InlineData("X-1", "L-99999999999")]
    public void An_id_that_is_no_plain_name_is_refused_and_becomes_no_path(string item, string look)
    {
        Assert.Equal("look", Shelf.Find(item, look).Faults[0].Field);
        Assert.False(Directory.Exists(Path.Combine(temp.Path, "looks")));
    }

    [Fact]
    public async Task Planes_of_another_length_than_the_record_says_are_refused()
    {
        LookRecord kept = await LookSamples.PutAsync(Shelf, LookSamples.Record("X-1", 7, 5));
        string planes = Path.Combine(Shelf.FolderOf("X-1", kept.LookId), LookRecord.PlanesFile);
        await File.WriteAllBytesAsync(planes, [1, 2, 3], TestContext.Current.CancellationToken);
        InputFault fault = Assert.Single(Shelf.Find("X-1", kept.LookId).Faults);
        Assert.Equal((LookRecord.PlanesFile, "3 bytes"), (fault.Field, fault.Found));
        Assert.Contains("9 planes × 5 × 7", fault.Wanted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("{\"itemId\":")]
    [InlineData("{\"how\":\"painted\"}")]
    public async Task A_record_that_cannot_be_read_is_refused_and_left_out_of_lists(string json)
    {
        LookRecord kept = await LookSamples.PutAsync(Shelf, LookSamples.Record("X-1", 7, 5));
        await File.WriteAllTextAsync(Path.Combine(Shelf.FolderOf("X-1", kept.LookId), "look.json"), json, TestContext.Current.CancellationToken);
        Assert.False(Shelf.Find("X-1", kept.LookId).IsTaken);
        Assert.Empty(Shelf.List("X-1"));
    }

    [Fact]
    public async Task A_folder_that_stands_already_is_not_replaced()
    {
        Directory.CreateDirectory(Path.Combine(temp.Path, "out", "panel"));
        using LookDraft draft = new(Path.Combine(temp.Path, "out"));
        await Assert.ThrowsAsync<IOException>(() => draft.PublishAsAsync(LookSamples.Record("", 2, 2), "panel", TestContext.Current.CancellationToken));
    }
}
