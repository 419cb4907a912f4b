using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Demo.Descriptions;

/// <summary>The demo's print conditions: press × ink set × stocks. Every number is invented.</summary>
internal static class DemoConditions
{
    private static readonly InkRole[] EightRoles = Enum.GetValues<InkRole>();
    private static readonly InkRole[] FiveRoles = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black, InkRole.White];

    /// <summary>All of them.</summary>
    public static IReadOnlyList<PrintCondition> All() =>
    [
        new("long-belt-boards", "Long belt on boards and blanks", true, "long-belt",
            ["poster-draft", "far-wall", "everyday", "fine", "fine-slow"], "eight-inks",
            ["fluted-5", "fluted-3", "foamed-pvc-3", "honeycomb-16", "foam-blank", "foam-blank-small", "aluminium-composite-3"],
            "hybrid-boards.icc", 260, Limits(EightRoles, 1.25), 36, 100, 500),
        new("long-belt-clear-sheets", "Long belt on clear and opal sheets, lit", true, "long-belt",
            ["everyday", "fine", "lit-panel"], "eight-inks", ["acrylic-clear-5", "acrylic-clear-5-offcut", "acrylic-opal-3", "petg-2"],
            "hybrid-boards.icc", 260, Limits(EightRoles, 1.2), 36, 110, 300),
        new("long-belt-rolls", "Long belt on rolls", true, "long-belt",
            ["poster-draft", "far-wall", "everyday", "fine", "fine-slow"], "eight-inks",
            ["mesh-roll", "banner-roll", "wall-film-roll", "backlit-roll", "label-roll"],
            "hybrid-rolls.icc", 240, Limits(EightRoles, 1.32), 34, 100, 500),
        new("short-belt-boards", "Short belt on boards", true, "short-belt",
            ["quick-look", "shop-floor", "close-view"], "five-inks",
            ["fluted-5", "fluted-3", "foamed-pvc-3", "honeycomb-16", "aluminium-composite-3", "petg-2"],
            "plain-boards.icc", 250, Limits(FiveRoles, 1.4), 50, 100, 500),
    ];

    // Ink spreads on the sheet, so less is sent than wanted: a power over one, at eleven even steps. White and clear stay straight.
    private static List<InkLimit> Limits(InkRole[] roles, double power) =>
        [.. roles.Select(r => new InkLimit(
            r, r is InkRole.Black ? 95 : 100, [.. Enumerable.Range(0, 11).Select(i => Sent(i / 10.0, r is InkRole.White or InkRole.Clear ? 1 : power))]))];

    private static double Sent(double wanted, double power) => Math.Round(100 * Math.Pow(wanted, power), 2);
}
