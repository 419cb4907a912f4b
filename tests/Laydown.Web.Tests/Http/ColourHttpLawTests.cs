using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Laydown.Colour.Charts;
using Laydown.Web.Tests.Sample;

namespace Laydown.Web.Tests.Http;

/// <summary>Colour over HTTP: what is taken in, what is refused and leaves nothing.</summary>
public sealed class ColourHttpLawTests
{
    private const string Condition = "/api/conditions/long-belt-boards";

    [Fact]
    public async Task Colours_are_separated_and_predicted_there_and_back()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        JsonElement separated = await PostAsync(served, Condition + "/separate", new { rows = (double[][])[[60, 5, 10], [50, 120, 0]] });
        JsonElement first = separated.GetProperty("result")[0], second = separated.GetProperty("result")[1];
        Assert.True(first.GetProperty("inGamut").GetBoolean());
        Assert.False(second.GetProperty("inGamut").GetBoolean());
        double[] inks = [.. first.GetProperty("inks").EnumerateArray().Select(i => i.GetDouble())];
        JsonElement predicted = await PostAsync(served, Condition + "/predict", new { rows = (double[][])[inks] });
        Assert.Equal(60, predicted.GetProperty("result")[0].GetProperty("lab").GetProperty("l").GetDouble(), 0.5);
    }

    [Fact]
    public async Task Readings_are_taken_in_and_never_changed()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        byte[] chart = SampleColour.Readings(ChartKind.Verify);
        Assert.Equal(HttpStatusCode.OK, await PutAsync(served, "/api/readings/strip-7.txt", chart));
        Assert.Equal(chart, await File.ReadAllBytesAsync(Path.Combine(served.Shop.Folder, "catalogue", "readings", "strip-7.txt")));
        Assert.Equal(HttpStatusCode.BadRequest, await PutAsync(served, "/api/readings/strip-7.txt", SampleColour.Readings(ChartKind.Linearise)));
        Assert.Equal(chart, await File.ReadAllBytesAsync(Path.Combine(served.Shop.Folder, "catalogue", "readings", "strip-7.txt")));
    }

    [Fact]
    public async Task Readings_at_hand_are_scored_against_the_model_and_calibrated_from()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Equal(HttpStatusCode.OK, await PutAsync(served, "/api/readings/wedges-1.txt", SampleColour.Readings(ChartKind.Linearise)));
        JsonElement score = await served.Client.GetFromJsonAsync<JsonElement>("/api/readings/wedges-1.txt/score/long-belt-boards");
        Assert.InRange(score.GetProperty("result").GetProperty("deltaE00").GetProperty("mean").GetDouble(), 0, 2);
        JsonElement calibration = await served.Client.GetFromJsonAsync<JsonElement>("/api/readings/wedges-1.txt/calibration?most=90");
        JsonElement[] inks = [.. calibration.GetProperty("result").GetProperty("inks").EnumerateArray()];
        Assert.NotEmpty(inks);
        using HttpResponseMessage unknown = await served.Client.GetAsync("/api/readings/none.txt/calibration");
        Assert.Equal(HttpStatusCode.BadRequest, unknown.StatusCode);
    }

    [Fact]
    public async Task Ink_optics_are_generic_and_flagged_until_readings_are_fitted()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        const string optics = "/api/conditions/long-belt-clear-sheets/optics";
        JsonElement before = (await served.Client.GetFromJsonAsync<JsonElement>(optics)).GetProperty("result");
        Assert.Equal(7, before.GetProperty("missing").GetArrayLength());
        byte[] text = new Laydown.Intake.Colour.ColourFiles().ReadingsText(Laydown.Demo.Profiles.DemoOptics.Readings(7));
        Assert.Equal(HttpStatusCode.OK, await PutAsync(served, "/api/readings/white-steps.txt", text));
        using HttpResponseMessage none = await served.Client.PostAsync(optics, null);
        Assert.Equal(HttpStatusCode.BadRequest, none.StatusCode);
        using HttpResponseMessage fitted = await served.Client.PostAsync(optics + "?said=white-steps.txt", null);
        Assert.Equal(HttpStatusCode.OK, fitted.StatusCode);
        JsonElement after = (await served.Client.GetFromJsonAsync<JsonElement>(optics)).GetProperty("result");
        Assert.Equal(0, after.GetProperty("missing").GetArrayLength());
        Assert.Equal("overBothAndThrough", after.GetProperty("inks")[0].GetProperty("absorptionFrom").GetString());
    }

    [Theory]
    [InlineData("C,M,Y,K,L,a,b\n0,0,0,0,95,0,0\n10,0,0,0,NaN,0,0\n")]
    [InlineData("no readings at all")]
    [InlineData("C,M,Y,K,L,a,b\n")]
    public async Task Readings_that_cannot_be_taken_leave_nothing(string text)
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        Assert.Equal(HttpStatusCode.BadRequest, await PutAsync(served, "/api/readings/bad.csv", Encoding.UTF8.GetBytes(text)));
        Assert.Equal(HttpStatusCode.BadRequest, await PutAsync(served, "/api/readings/..bad.csv", SampleColour.Readings(ChartKind.Verify)));
        Assert.Equal(["sample-chart.txt"], Directory.GetFiles(Path.Combine(served.Shop.Folder, "catalogue", "readings")).Select(Path.GetFileName));
    }

    [Fact]
    public async Task A_later_reading_is_kept_with_its_verdict()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using ByteArrayContent body = new(SampleColour.Readings(ChartKind.Verify));
        using HttpResponseMessage answer = await served.Client.PostAsync(Condition + "/drift/strip-8.txt", body);
        JsonElement kept = (await answer.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("result");
        Assert.Equal("use", kept.GetProperty("drift").GetProperty("verdict").GetString());
        // The print is spectral, the model has three bands: what is left between the two stays under what the eye sees.
        Assert.InRange(kept.GetProperty("predicted").GetProperty("mean").GetDouble(), 0, 1);
    }

    [Fact]
    public async Task A_colour_that_is_none_is_refused_and_the_library_stays()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        string file = Path.Combine(served.Shop.Folder, "catalogue", "named-colours.json");
        byte[] before = await File.ReadAllBytesAsync(file);
        using HttpResponseMessage answer = await served.Client.PutAsJsonAsync(
            "/api/named-colours/loud", new { id = "loud", name = "Loud", colour = new { l = 140, a = 0, b = 0 }, source = "a sample" });
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Equal(before, await File.ReadAllBytesAsync(file));
    }

    [Fact]
    public async Task An_unknown_print_condition_is_refused()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        using HttpResponseMessage answer = await served.Client.GetAsync("/api/conditions/none");
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task Pictures_of_the_shift_are_pngs()
    {
        await using ServedShop served = await ServedShop.OpenAsync();
        foreach (string what in (string[])["page", "proof", "map"])
        {
            using HttpResponseMessage answer = await served.Client.GetAsync("/items/TW-1041-1/shift/" + what + ".png");
            Assert.Equal("image/png", answer.Content.Headers.ContentType?.MediaType);
        }
    }

    private static async Task<JsonElement> PostAsync(ServedShop served, string path, object body)
    {
        using HttpResponseMessage answer = await served.Client.PostAsJsonAsync(path, body);
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    private static async Task<HttpStatusCode> PutAsync(ServedShop served, string path, byte[] bytes)
    {
        using ByteArrayContent body = new(bytes);
        using HttpResponseMessage answer = await served.Client.PutAsync(path, body);
        return answer.StatusCode;
    }
}
