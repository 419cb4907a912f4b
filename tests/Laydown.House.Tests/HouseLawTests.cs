using System.Reflection;

namespace Laydown.House.Tests;

public sealed class HouseLawTests
{
    private static readonly string[] CoreWalls = ["Measures", "Geometry", "Colour", "Optics", "Raster", "Artwork", "Press", "Layout", "Plan"];
    private static readonly Lazy<IReadOnlyList<(string From, string To)>> Arrows = new(() => HouseArrows.Of(HouseFiles.Walls()));

    [Fact]
    public void The_drawing_of_the_house_and_its_project_files_agree() =>
        Assert.Empty(HouseRules.Differences(HouseFiles.WallTable(HouseFiles.Read("docs/architecture.md")), HouseFiles.ProjectReferences()));

    [Fact]
    public void Rooms_of_a_core_wall_form_no_circle() =>
        Assert.Empty(CoreWalls.SelectMany(w => HouseRules.RoomCircles(Arrows.Value, "Laydown." + w)));

    [Fact]
    public void Arrows_were_read_from_every_wall_but_the_first() =>
        Assert.Equal(
            HouseFiles.ProjectReferences().Where(p => p.Value.Count > 0).Select(p => p.Key).Order(),
            HouseFiles.ProjectReferences().Keys.Where(w => Arrows.Value.Any(a =>
                a.From.StartsWith(w + ".", StringComparison.Ordinal) && !a.To.StartsWith(w + ".", StringComparison.Ordinal))).Order());

    [Fact]
    public void Pages_and_commands_know_the_shop_and_core_records_only()
    {
        string[] behindPorts = ["Laydown.Intake", "Laydown.Output", "Laydown.Store"];
        Assert.Empty(HouseRules.Forbidden(Arrows.Value, "Laydown.Web", "Laydown.Web.Wiring", behindPorts));
        Assert.Empty(HouseRules.Forbidden(Arrows.Value, "Laydown.Cli", "Laydown.Cli.Wiring", behindPorts));
    }

    [Fact]
    public void Public_classes_are_sealed_static_or_abstract() =>
        Assert.Empty(HouseRules.OpenClasses(HouseFiles.Walls().SelectMany(a => a.GetTypes())));

    [Fact]
    public void No_static_field_can_be_reassigned() =>
        Assert.Empty(HouseRules.ReassignableStatics(HouseFiles.Walls().SelectMany(a => a.GetTypes())));

    [Fact]
    public void Sources_cited_and_sources_listed_are_the_same_set()
    {
        IReadOnlySet<string> listed = HouseFiles.ListedSources(HouseFiles.Read("docs/sources.md"));
        string text = HouseFiles.SourceText("src", "tests");
        IReadOnlySet<string> cited = HouseFiles.CitedSources(text);
        Assert.Empty(cited.Except(listed).Select(k => $"[{k}] is cited but not listed"));
        Assert.Empty(listed.Where(k => !text.Contains($"[{k}]", StringComparison.Ordinal)).Select(k => $"[{k}] is listed but not cited"));
    }

    /// <summary>Optimisation can drop a local and with it an arrow. The number walls are always optimised; they can reach nothing but Colour and Measures.</summary>
    [Fact]
    public void Every_wall_but_the_number_walls_is_built_without_optimisation_so_that_no_arrow_is_hidden() =>
        Assert.All(HouseFiles.Walls().Where(w => w.GetName().Name is not ("Laydown.Colour" or "Laydown.Optics" or "Laydown.Raster")), wall => Assert.True(
            wall.GetCustomAttribute<System.Diagnostics.DebuggableAttribute>()?.IsJITOptimizerDisabled, wall.GetName().Name));
}
