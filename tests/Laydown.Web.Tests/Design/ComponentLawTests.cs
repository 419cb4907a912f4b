using Bunit;
using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Web.Design;

namespace Laydown.Web.Tests.Design;

public sealed class ComponentLawTests : BunitContext
{
    [Theory]
    [InlineData("Waiting", "Waiting")]
    [InlineData("Stopped", "Held back")]
    [InlineData("Ready", "Ready")]
    [InlineData("Planned", "Planned")]
    [InlineData("InProgress", "Being made")]
    [InlineData("Completed", "Made")]
    [InlineData("Aborted", "Not made")]
    [InlineData("Stop", "Stop")]
    [InlineData("Warn", "Warn")]
    [InlineData("Note", "Note")]
    public void A_state_is_a_word_and_a_hidden_shape(string state, string word)
    {
        var mark = Render<StateMark>(p => p.Add(c => c.State, state));
        Assert.Equal(word, mark.Find("span").TextContent.Trim());
        Assert.Equal("true", mark.Find("svg").GetAttribute("aria-hidden"));
        Assert.NotEmpty(mark.Find("svg").Children);
    }

    [Fact]
    public void States_that_can_stand_together_have_shapes_of_their_own()
    {
        string[] states = ["Waiting", "Stopped", "Ready", "Planned", "InProgress", "Completed", "Aborted"];
        Assert.Equal(states.Length, states.Select(s => MarkLook.Of(s).Shape).Distinct().Count());
        string[] severities = ["Stop", "Warn", "Note"];
        Assert.Equal(severities.Length, severities.Select(s => MarkLook.Of(s).Shape).Distinct().Count());
    }

    [Fact]
    public void An_unknown_state_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => MarkLook.Of("Amber"));

    [Fact]
    public void A_figure_opens_to_its_formula_and_source()
    {
        Figure figure = new("time for one sheet", 87.8, "s", "24 scans × 3.66 s", "common practice, no source");
        var line = Render<FigureLine>(p => p.Add(c => c.Of, figure));
        Assert.Contains("time for one sheet", line.Find("summary").TextContent, StringComparison.Ordinal);
        Assert.Contains("87.8", line.Find("summary .num").TextContent, StringComparison.Ordinal);
        Assert.Contains("24 scans × 3.66 s", line.Find(".because").TextContent, StringComparison.Ordinal);
        Assert.Contains("common practice, no source", line.Find(".because").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_finding_shows_measured_and_wanted_value_and_can_be_chosen_where_it_has_a_place()
    {
        int chosen = 0;
        Finding finding = new("image-ppi", Severity.Stop, 1, new(0, 0, 10, 10), "Too coarse.", "31 ppi", "at least 58 ppi", "Ask for a larger one.", "from memory");
        var row = Render<FindingRow>(p => p.Add(c => c.Of, finding).Add(c => c.Number, 3).Add(c => c.OnChoose, n => chosen = n));
        string text = row.Find("li").TextContent;
        Assert.All((string[])["Stop", "Too coarse.", "31 ppi", "at least 58 ppi", "Ask for a larger one.", "image-ppi"], t => Assert.Contains(t, text, StringComparison.Ordinal));
        row.Find("button").Click();
        Assert.Equal(3, chosen);
    }

    [Fact]
    public void A_finding_without_a_place_has_no_button()
    {
        Finding finding = new("file-name", Severity.Note, null, null, "No name.", "none", "one", null, "from memory");
        var row = Render<FindingRow>(p => p.Add(c => c.Of, finding).Add(c => c.Number, 1).Add(c => c.OnChoose, _ => { }));
        Assert.Empty(row.FindAll("button"));
    }

    [Fact]
    public void Words_of_a_finding_are_never_markup()
    {
        Finding finding = new("x", Severity.Note, 1, null, "<script>alert(1)</script>", "<b>", "&", null, "from memory");
        var row = Render<FindingRow>(p => p.Add(c => c.Of, finding).Add(c => c.Number, 1));
        Assert.Empty(row.FindAll("script"));
        Assert.Empty(row.FindAll("b"));
        Assert.Contains("<script>alert(1)</script>", row.Find("li").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_ink_has_a_swatch_with_its_name()
    {
        foreach (InkRole role in Enum.GetValues<InkRole>())
            Assert.Equal(Say.Ink(role), Render<InkSwatch>(p => p.Add(c => c.Role, role)).Find("span").TextContent.Trim());
    }

    [Fact]
    public void A_field_joins_label_and_input()
    {
        var field = Render<Field>(p => p.Add(c => c.Id, "gap").Add(c => c.Label, "Gap, mm").AddChildContent("<input id='gap'/>"));
        Assert.Equal("gap", field.Find("label").GetAttribute("for"));
    }

    [Fact]
    public void A_button_is_a_link_only_where_it_leads_somewhere()
    {
        Assert.Equal("A", Render<PushButton>(p => p.Add(c => c.Href, "/runs").AddChildContent("Runs")).Find(".button").TagName);
        Assert.Equal("BUTTON", Render<PushButton>(p => p.AddChildContent("Make")).Find(".button").TagName);
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(0.00123, "0.0012")]
    [InlineData(0.125, "0.125")]
    [InlineData(8.25, "8.25")]
    [InlineData(8, "8.0")]
    [InlineData(87.84, "87.8")]
    [InlineData(1380.4, "1380")]
    [InlineData(-12.34, "-12.3")]
    public void Numbers_are_written_one_way(double value, string written) => Assert.Equal(written, Say.Number(value));

    [Theory]
    [InlineData(12.34, "12.3 min")]
    [InlineData(59.96, "1 h 00 min")]
    [InlineData(125, "2 h 05 min")]
    public void Minutes_turn_into_hours(double minutes, string written) => Assert.Equal(written, Say.Minutes(minutes));

    [Theory]
    [InlineData(-2, "2 days late")]
    [InlineData(-1, "1 day late")]
    [InlineData(0, "today")]
    [InlineData(1, "tomorrow")]
    [InlineData(5, "in 5 days")]
    public void Days_are_told_from_today(int days, string written)
    {
        DateOnly today = new(2026, 11, 26);
        Assert.Equal(written, Say.Away(today.AddDays(days), today));
    }

    [Theory]
    [InlineData(812, "812 bytes")]
    [InlineData(14_200, "14.2 kB")]
    [InlineData(3_100_000, "3.1 MB")]
    [InlineData(4_700_000_000, "4.70 GB")]
    public void Lengths_of_files_are_in_powers_of_ten(long bytes, string written) => Assert.Equal(written, Say.Bytes(bytes));
}
