using Laydown.Artwork.Pages;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Right triangles cut from pictures of 60 × 40 mm, four on a sheet, each within the rectangle of another, turned to all four sides.</summary>
internal static class NestedPieces
{
    public static readonly PointMm[] Triangle = [new(1, 1), new(55, 1), new(1, 36)];

    public static ItemRecord Item { get; } = World.Item(
        "T-1-1", 60, 40, [World.Colour], finishing: [new(FinishingKind.CutContour, 1)], cuts: [new CutPath(Triangle, true, "Cutting")]);

    /// <summary>Pairs that face each other over their long sides, 5 mm apart and more.</summary>
    public static Placement[] Placements { get; } =
        [World.At(Item, 4, 4, 0), World.At(Item, 14, 10, 180, 2), World.At(Item, 80, 4, 90, 3), World.At(Item, 86, 14, 270, 4)];

    public static RunContext Run(int ppi)
    {
        RunContext run = World.Run(new(140, 90), [Item], Placements, World.Condition(400, light: false), ppi);
        PieceOutline outline = new(Item.Item.Id, Triangle, []);
        return run with { Run = run.Run with { Sheets = [run.Run.Sheets[0] with { Outlines = [outline] }] } };
    }
}
