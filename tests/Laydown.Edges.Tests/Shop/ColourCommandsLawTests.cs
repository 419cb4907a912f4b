using System.Text.Json;
using Laydown.Cli;
using Laydown.Edges.Tests.Orders;
using Laydown.Edges.Tests.Store;
using Xunit;

namespace Laydown.Edges.Tests.UseCases;

/// <summary>Verbs of colour that work on files alone, on a public characterisation.</summary>
public sealed class ColourCommandsLawTests : IDisposable
{
    private static readonly string Chart = Path.Combine(Checkout.Root, "tests", "data", "colour", "TR002.cgats.txt");
    private readonly TempFolder temp = new();

    [Fact]
    public async Task A_chart_is_fitted_and_predicts_separates_and_scores_without_a_shop()
    {
        (int code, JsonElement report) = await AskAsync("condition", "fit", Chart, "--kind", "cellular", "--out", At("fit.json"));
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal("laydown/fit-report", report.GetProperty("schema").GetString());
        Assert.Equal(1, report.GetProperty("version").GetInt32());
        double heldOut = report.GetProperty("report").GetProperty("crossValidated").GetProperty("mean").GetDouble();
        Assert.InRange(heldOut, 0.01, 1);

        // What was measured is predicted about as well as the fit says of itself.
        (code, JsonElement score) = await AskAsync("condition", "score", "--fit", At("fit.json"), Chart);
        Assert.Equal(ExitCodes.Done, code);
        Assert.InRange(score.GetProperty("deltaE00").GetProperty("mean").GetDouble(), 0, heldOut + 0.1);

        File.WriteAllText(At("in.csv"), "id,cyan,magenta,yellow,black\npaper,0,0,0,0\nmid,30,40,20,5\n");
        (code, JsonElement predicted) = await AskAsync("condition", "predict", "--fit", At("fit.json"), At("in.csv"), "--out", At("out.csv"));
        Assert.Equal(ExitCodes.Done, code);
        JsonElement mid = predicted.GetProperty("colours")[1].GetProperty("lab");
        Assert.StartsWith("id,Cyan,Magenta,Yellow,Black,L,a,b\npaper,0,0,0,0,", File.ReadAllText(At("out.csv")), StringComparison.Ordinal);

        // There and back: inks found for the predicted colour look like it.
        File.WriteAllText(At("lab.csv"), Invariant($"L,a,b\n{mid.GetProperty("l").GetDouble()},{mid.GetProperty("a").GetDouble()},{mid.GetProperty("b").GetDouble()}\n50,120,0\n"));
        (code, JsonElement separated) = await AskAsync(
            "condition", "separate", "--fit", At("fit.json"), At("lab.csv"), "--total", "300", "--limits", "100,100,100,95", "--black", "medium");
        Assert.Equal(ExitCodes.Done, code);
        Assert.True(separated.GetProperty("colours")[0].GetProperty("inGamut").GetBoolean());
        Assert.False(separated.GetProperty("colours")[1].GetProperty("inGamut").GetBoolean());
        Assert.All(separated.GetProperty("colours").EnumerateArray(), c =>
        {
            double[] inks = [.. c.GetProperty("inks").EnumerateArray().Select(i => i.GetDouble())];
            Assert.True(inks.Sum() <= 3 + 1e-9);
            Assert.True(inks[3] <= 0.95 + 1e-9);
        });
    }

    [Fact]
    public async Task Wedges_of_a_chart_give_limits_and_curves()
    {
        (int code, JsonElement found) = await AskAsync("condition", "calibrate", Chart);
        Assert.Equal(ExitCodes.Done, code);
        Assert.Equal("laydown/calibration", found.GetProperty("schema").GetString());
        Assert.Equal(4, found.GetProperty("inks").GetArrayLength());
        Assert.All(found.GetProperty("inks").EnumerateArray(), ink =>
        {
            double[] curve = [.. ink.GetProperty("curve").GetProperty("curve").EnumerateArray().Select(v => v.GetDouble())];
            Assert.Equal(0, curve[0]);
            Assert.Equal(100, curve[^1]);
            Assert.Equal(curve.Order(), curve);
        });
    }

    [Theory]
    [InlineData("L,a,b\n50,ten,0\n", "line 2, column a", "ten")]
    [InlineData("L,a,b\n50,10\n", "line 2", "2 values")]
    [InlineData("L,a\n50,10\n", "line 1", "names L, a")]
    [InlineData("L,a,b\n50,NaN,0\n", "line 2, column a", "NaN")]
    [InlineData("L,a,b\n500,0,0\n", "line 2", "500, 0, 0")]
    [InlineData("L,a,b\n", "lines", "1")]
    public async Task A_list_that_cannot_be_taken_is_refused_by_line_and_column(string csv, string field, string found)
    {
        await AskAsync("condition", "fit", Chart, "--kind", "neugebauer", "--out", At("fit.json"));
        File.WriteAllText(At("lab.csv"), csv);
        (int code, JsonElement error) = await AskAsync("condition", "separate", "--fit", At("fit.json"), At("lab.csv"), "--out", At("out.csv"));
        Assert.Equal(ExitCodes.Refused, code);
        Assert.Equal(field, error.GetProperty("faults")[0].GetProperty("field").GetString());
        Assert.Equal(found, error.GetProperty("faults")[0].GetProperty("found").GetString());
        Assert.False(File.Exists(At("out.csv")));
    }

    [Theory]
    [InlineData("--limits", "100,100")]
    [InlineData("--limits", "100,100,100,0")]
    [InlineData("--total", "20")]
    [InlineData("--black-start", "0")]
    public async Task Limits_that_leave_nothing_are_refused(string option, string value)
    {
        await AskAsync("condition", "fit", Chart, "--kind", "neugebauer", "--out", At("fit.json"));
        File.WriteAllText(At("lab.csv"), "L,a,b\n50,0,0\n");
        (int code, JsonElement error) = await AskAsync("condition", "separate", "--fit", At("fit.json"), At("lab.csv"), option, value);
        Assert.Equal(ExitCodes.Refused, code);
        Assert.NotEmpty(error.GetProperty("faults").EnumerateArray());
    }

    [Fact]
    public async Task Readings_that_carry_no_model_leave_no_file()
    {
        File.WriteAllText(At("short.csv"), "C,M,Y,K,L,a,b\n0,0,0,0,95,0,0\n100,0,0,0,55,-36,-50\n");
        (int code, JsonElement error) = await AskAsync("condition", "fit", At("short.csv"), "--out", At("fit.json"));
        Assert.Equal(ExitCodes.Refused, code);
        Assert.NotEmpty(error.GetProperty("faults").EnumerateArray());
        Assert.Equal(["short.csv"], Directory.GetFiles(temp.Path).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("{\"schema\":\"laydown/fit\",\"version\":1}")]
    [InlineData("not json")]
    [InlineData("{\"schema\":\"laydown/fit\",\"version\":1,\"inkNames\":[\"C\"],\"kind\":\"cellular\",\"yuleNielsen\":2,\"crossValidated\":{\"count\":1,\"mean\":0,\"median\":0,\"p95\":0,\"max\":0},\"curves\":[[0,1]],\"nodes\":[[0,1]],\"roots\":\"AAAA\"}")]
    public async Task A_model_that_is_none_is_refused(string json)
    {
        File.WriteAllText(At("fit.json"), json);
        File.WriteAllText(At("lab.csv"), "L,a,b\n50,0,0\n");
        (int code, JsonElement error) = await AskAsync("condition", "separate", "--fit", At("fit.json"), At("lab.csv"));
        Assert.Equal(ExitCodes.Refused, code);
        Assert.Equal("fit.json", error.GetProperty("faults")[0].GetProperty("file").GetString());
    }

    [Fact]
    public async Task Ctrl_C_in_a_fit_leaves_no_file()
    {
        using CancellationTokenSource over = new();
        await over.CancelAsync();
        await using StringWriter output = new(), error = new();
        int code = await CommandLine.RunAsync(["condition", "fit", Chart, "--out", At("fit.json"), "--json"], output, error, over.Token);
        Assert.Equal(ExitCodes.Cancelled, code);
        Assert.Empty(Directory.GetFiles(temp.Path));
    }

    public void Dispose() => temp.Dispose();

    private static async Task<(int Code, JsonElement Answer)> AskAsync(params string[] words)
    {
        await using StringWriter output = new(), error = new();
        int code = await CommandLine.RunAsync([.. words, "--json"], output, error, CancellationToken.None);
        return (code, JsonDocument.Parse(output.ToString()).RootElement);
    }

    private string At(string name) => Path.Combine(temp.Path, name);
}
