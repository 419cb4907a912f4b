using Laydown.House.Tests.Canaries;

namespace Laydown.House.Tests;

/// <summary>Each rule of the house must catch a small wrong thing; a rule that cannot fail is a defect.</summary>
public sealed class CanaryLawTests
{
    private static readonly IReadOnlyList<(string From, string To)> Arrows = HouseArrows.Of([typeof(CanaryLawTests).Assembly]);

    [Fact]
    public void A_circle_of_rooms_is_caught() => Assert.Equal(2, HouseRules.RoomCircles(Arrows, "Laydown.House.Tests.Canaries").Count);

    [Fact]
    public void A_page_that_reaches_behind_a_port_is_caught() => Assert.NotEmpty(HouseRules.Forbidden(
        Arrows, "Laydown.House.Tests.Canaries.Left", "Laydown.House.Tests.Canaries.Wiring", "Laydown.House.Tests.Canaries.Right"));

    [Fact]
    public void Wiring_may_reach_behind_a_port() => Assert.Empty(HouseRules.Forbidden(
        Arrows, "Laydown.House.Tests.Canaries.Left", "Laydown.House.Tests.Canaries.Left", "Laydown.House.Tests.Canaries.Right"));

    [Fact]
    public void An_open_class_is_caught() => Assert.Equal(["Laydown.House.Tests.Canaries.OpenCanary"], HouseRules.OpenClasses([typeof(OpenCanary)]));

    [Fact]
    public void A_static_field_that_can_be_reassigned_is_caught() => Assert.Single(HouseRules.ReassignableStatics([typeof(OpenCanary)]));

    [Fact]
    public void A_wall_that_knows_more_than_is_drawn_is_caught() => Assert.Equal(
        ["Laydown.One knows Laydown.Two, which is not drawn"],
        HouseRules.Differences(HouseFiles.WallTable("| Laydown.One | – | x |\n"), Walls("Laydown.One", "Laydown.Two")));

    [Fact]
    public void A_wall_that_is_drawn_but_not_built_is_caught() => Assert.Contains(
        "Laydown.Three is drawn but not built",
        HouseRules.Differences(HouseFiles.WallTable("| Laydown.One | Two | x |\n| Laydown.Three | – | x |\n"), Walls("Laydown.One", "Laydown.Two")));

    [Fact]
    public void A_citation_is_seen_and_an_index_is_not() => Assert.Equal(
        new HashSet<string> { "Kubelka1954", "ISO19593-1" }, HouseFiles.CitedSources("/// R12 [Kubelka1954], [ISO19593-1]; row[R1b] text[12] [Fact]").Where(k => k != "R1b").ToHashSet());

    [Fact]
    public void A_listed_source_is_seen() => Assert.Equal(
        new HashSet<string> { "Kubelka1954" }, HouseFiles.ListedSources("| key | source |\n| --- | --- |\n| Kubelka1954 | x |\n"));

    private static Dictionary<string, IReadOnlySet<string>> Walls(string wall, string knows) => new() { [wall] = new HashSet<string> { knows } };
}
