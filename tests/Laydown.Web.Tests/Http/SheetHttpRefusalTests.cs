using System.Net;
using Laydown.Measures;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>What there is not is refused by name, and no address leads out of the run's folder.</summary>
public sealed class SheetHttpRefusalTests(MadeShop shop) : IClassFixture<MadeShop>
{
    [Theory]
    [InlineData("/api/runs/R-none/sheets/1", "id")]
    [InlineData("/api/runs/R-20261126-02/sheets/1", "state")]
    [InlineData("/api/runs/R-20261126-01/sheets/0", "sheet")]
    [InlineData("/api/runs/R-20261126-01/sheets/99", "sheet")]
    [InlineData("/api/runs/R-20261126-01/sheets/1?files=proofs", "files")]
    [InlineData("/api/runs/R-20261126-01/sheets/1?files=..%2F..%2Fstore", "files")]
    [InlineData("/api/runs/R-20261126-01/sheets/1/place?x=-1&y=3", "place")]
    [InlineData("/api/runs/R-20261126-01/sheets/1/place?xMm=1e9&yMm=3", "place")]
    [InlineData("/api/runs/R-20261126-01/sheets/1/place?xMm=NaN&yMm=3", "place")]
    [InlineData("/api/runs/R-20261126-01/sheets/1/place?x=5&y=5&level=30", "level")]
    [InlineData("/api/runs/R-20261126-01/sheets/1/place?x=5&y=5&level=-1", "level")]
    public async Task What_there_is_not_is_refused_by_the_name_of_the_field(string path, string field)
    {
        ServedShop served = shop.Served;
        HttpResponseMessage answer = await served.Client.GetAsync(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(Invariant($"\"field\": \"{field}\""), await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("contone/seen/all/tiles/0123456789abcdef/0/0-0")]
    [InlineData("contone/seen/ink-99/tiles/MARK/0/0-0")]
    [InlineData("contone/seen/pass-1/tiles/MARK/0/0-0")]
    [InlineData("contone/seen/ink-0/tiles/MARK/0/0-0")]
    [InlineData("contone/seen/ink-1-2/tiles/MARK/0/0-0")]
    [InlineData("contone/seen/all/tiles/MARK/40/0-0")]
    [InlineData("contone/seen/all/tiles/MARK/-1/0-0")]
    [InlineData("contone/seen/all/tiles/MARK/0/999-0")]
    [InlineData("contone/seen/all/tiles/MARK/0/0--1")]
    [InlineData("contone/seen/all/tiles/MARK/0/0-0.jpg")]
    [InlineData("contone/seen/all/tiles/MARK/0/..%2F..%2Fmanifest.json")]
    [InlineData("contone/seen/..%2F..%2F..%2Fstore/whole.png")]
    [InlineData("dots/seen/ink-3/whole.png")]
    [InlineData("other/seen/all/whole.png")]
    public async Task A_tile_there_is_not_is_nothing(string path)
    {
        ServedShop served = shop.Served;
        string mark = (await served.Shop.Services.Sheets.Open.OpenAsync(MadeSheets.Run, 1, "contone", CancellationToken.None)).Value.Sheet.Mark;
        HttpResponseMessage answer = await served.Client.GetAsync(Invariant($"/runs/{MadeSheets.Run}/sheets/1/{path.Replace("MARK", mark, StringComparison.Ordinal)}"));
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_record_with_names_that_lead_out_of_the_folder_opens_nothing()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord made = await MadeSheets.WriteAsync(served.Shop);
        OpenSheet open = served.Shop.Services.Sheets.Open;
        foreach (RunRecord tricked in new[]
            {
                made with { FolderName = "../runs/" + MadeSheets.Run },
                made with { Files = [.. made.Files.Select(f => f with { Name = "../" + MadeSheets.Run + "/" + f.Name })] },
            })
        {
            await served.Shop.Store.SaveRunsAsync([tricked], Laydown.Shop.Orders.ItemState.Completed, CancellationToken.None);
            Assert.False((await open.OpenAsync(MadeSheets.Run, 1, "contone", CancellationToken.None)).IsTaken);
        }
    }

    [Fact]
    public async Task A_damaged_file_is_named()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord made = await MadeSheets.WriteAsync(served.Shop);
        string path = Path.Combine(served.Shop.Folder, "runs", MadeSheets.Run, made.Files[0].Name);
        File.WriteAllBytes(path, File.ReadAllBytes(path)[..40]);
        Reading<OpenedSheet> opened = await served.Shop.Services.Sheets.Open.OpenAsync(MadeSheets.Run, 1, "contone", CancellationToken.None);
        Assert.Equal(made.Files[0].Name, Assert.Single(opened.Faults).File);
    }

    [Fact]
    public async Task A_cancelled_request_draws_nothing_and_keeps_no_turn()
    {
        ServedShop served = shop.Served;
        SheetServices sheets = served.Shop.Services.Sheets;
        OpenedSheet opened = (await sheets.Open.OpenAsync(MadeSheets.Run, 1, "contone", CancellationToken.None)).Value;
        for (int i = 0; i < 2 * DrawSheet.MostWaiting; i++)
        {
            using CancellationTokenSource stop = new();
            await stop.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => sheets.Draw.TileAsync(opened, new(SheetSeenKind.All, 0), 0, 0, 0, stop.Token));
        }

        Assert.True((await sheets.Draw.TileAsync(opened, new(SheetSeenKind.All, 0), 0, 0, 0, CancellationToken.None)).IsTaken);
    }
}
