using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using Laydown.Intake.Layout;
using Laydown.Layout.Jobs;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;
using Laydown.Web.Tests.Http;

namespace Laydown.Web.Tests.Layout;

/// <summary>A released layout stays as it is until the release is taken back; what is fetched of a layout is what the command line writes.</summary>
public sealed class LayoutReleaseLawTests
{
    private const string Run = "R-20261126-01", Address = "/api/runs/" + Run + "/layout", Who = "Marram Holt";

    [Fact]
    public async Task Released_it_is_neither_changed_nor_tried_nor_saved_and_taken_back_it_is()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonNode layout = (await served.Client.GetFromJsonAsync<JsonNode>(Address))!["result"]!;
        JsonNode sheets = layout["sheets"]!, mark = layout["mark"]!;
        (HttpStatusCode status, JsonNode released) = await PostAsync(served, "/release", new { by = Who, mark });
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains(Who, (string)released["result"]!["released"]!, StringComparison.Ordinal);
        RunRecord held = (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        Assert.Equal((Who, (string)mark!, true), (held.Release!.By, held.Release.Mark, held.Release.Holds));

        object edit = new { verb = "lock", sheet = 0, spot = 0 };
        Assert.Equal(HttpStatusCode.Conflict, (await PostAsync(served, "/edit", new { sheets, edit })).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await PostAsync(served, "/finish", new { sheets })).Status);
        using HttpResponseMessage put = await served.Client.PutAsJsonAsync(Address, new { sheets, mark });
        Assert.Equal(HttpStatusCode.Conflict, put.StatusCode);
        Assert.Contains("take the release back", await put.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await PostAsync(served, "/edit", new { sheets, edit = new { verb = "look", sheet = 0, spot = 0 } })).Status);

        Assert.Equal(HttpStatusCode.OK, (await PostAsync(served, "/take-back", new { by = "ines alder" })).Status);
        Assert.Equal(HttpStatusCode.OK, (await PostAsync(served, "/edit", new { sheets, edit })).Status);
        Assert.Equal("ines alder", (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.Release!.TakenBackBy);
    }

    [Theory]
    [InlineData("/release", "", "no name")]
    [InlineData("/release", "A Stranger", "A Stranger")]
    [InlineData("/take-back", Who, "not released")]
    public async Task Who_may_not_and_what_is_not_released_is_refused_and_nothing_changes(string path, string by, string found)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonNode mark = (await served.Client.GetFromJsonAsync<JsonNode>(Address))!["result"]!["mark"]!;
        (HttpStatusCode status, JsonNode refused) = await PostAsync(served, path, new { by, mark });
        Assert.Equal(HttpStatusCode.Conflict, status);
        Assert.Contains(found, (string)refused["result"]!["faults"]![0]!["found"]!, StringComparison.Ordinal);
        Assert.Null((await served.Shop.Store.RunAsync(Run, CancellationToken.None))!.Release);
    }

    [Fact]
    public async Task Another_layout_than_the_one_looked_at_is_not_released()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        (HttpStatusCode status, JsonNode refused) = await PostAsync(served, "/release", new { by = Who, mark = "0123456789abcdef" });
        Assert.Equal((HttpStatusCode.Conflict, "mark"), (status, (string)refused["result"]!["faults"]![0]!["field"]!));
    }

    [Fact]
    public async Task Files_of_a_layout_are_those_of_its_saved_layout_and_the_layout_itself_keeps_its_rules()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonNode layout = (await served.Client.GetFromJsonAsync<JsonNode>(Address))!["result"]!;
        int sheets = layout["sheets"]!.AsArray().Count;
        JsonArray files = (await served.Client.GetFromJsonAsync<JsonNode>(Address + "/files"))!["result"]!["files"]!.AsArray();
        Assert.Equal((2 * sheets) + 2, files.Count);
        foreach (JsonNode? file in files)
        {
            byte[] bytes = await served.Client.GetByteArrayAsync((string)file!["address"]!);
            Assert.Equal((int)file["bytes"]!, bytes.Length);
        }

        // The layout itself is taken by the command line's own reader and check, in the size its pieces are cut to.
        string path = Path.Combine(Directory.CreateTempSubdirectory("laydown-layout-").FullName, "layout.json");
        await File.WriteAllBytesAsync(path, await served.Client.GetByteArrayAsync(Address + "/files/layout.json"));
        JobLayout read = new JobReader().Layout(path).Value;
        Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
        Assert.Empty(JobChecks.Faults(read));
        Assert.Equal(Invariant($"Run {Run}, layout {LayoutMark.Short((string)layout["mark"]!)}"), read.Job.Name);
        Assert.Equal(layout["pieces"]!.AsArray().Sum(p => (int)p!["quantity"]!), read.Sheets.Sum(s => s.Repeats * s.Spots.Count));
        string svg = Encoding.UTF8.GetString(await served.Client.GetByteArrayAsync(Address + "/files/sheet-01.svg"));
        Assert.Contains("data-processing-step=\"Structural/Cutting\"", svg, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync(Address + "/files/sheet-99.svg")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await served.Client.GetAsync(Address + "/files/..%2Fshop.json")).StatusCode);
    }

    [Fact]
    public async Task Press_files_of_another_layout_are_told_to_be_old()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        RunRecord run = (await served.Shop.Store.RunAsync(Run, CancellationToken.None))!;
        ManifestEntry file = new("sheet-01-layer-1-colour.tif", "contone", 1, new string('0', 64));
        RunRecord made = run with { State = RunState.Completed, Files = [file], FolderName = Run, FilesLayout = LayoutMark.Of(run.Run.Sheets) };
        await served.Shop.Store.SaveRunsAsync([made], Laydown.Shop.Orders.ItemState.Completed, CancellationToken.None);
        Assert.DoesNotContain("Press files of another layout", await served.Client.GetStringAsync("/runs/" + Run), StringComparison.Ordinal);
        await served.Shop.Store.SaveRunsAsync([made with { FilesLayout = "0123456789abcdef" }], Laydown.Shop.Orders.ItemState.Completed, CancellationToken.None);
        Assert.Contains("Press files of another layout", await served.Client.GetStringAsync("/runs/" + Run), StringComparison.Ordinal);
        Assert.Contains("0123-4567", await served.Client.GetStringAsync("/runs/" + Run + "/set-up"), StringComparison.Ordinal);
    }

    private static async Task<(HttpStatusCode Status, JsonNode Body)> PostAsync(ServedShop served, string path, object body)
    {
        using HttpResponseMessage answer = await served.Client.PostAsJsonAsync(Address + path, body);
        return (answer.StatusCode, (await answer.Content.ReadFromJsonAsync<JsonNode>())!);
    }
}
