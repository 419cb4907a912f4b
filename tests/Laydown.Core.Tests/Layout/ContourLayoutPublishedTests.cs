using Laydown.Geometry.Shapes;
using Laydown.Instances.Polygons;
using Laydown.Layout.Contours;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

public sealed class ContourLayoutPublishedTests
{
    /// <summary>
    /// Mean densities of 100 published runs of 1200 s are 92.23 and 89.08 % [Gardeyn2025]; a short search must come within 5 points of the first.
    /// The shapes of the second lie on a grid of 1, so its lengths go in steps: 11 is published; 12, which is 81.66 %, must be reached.
    /// </summary>
    [Theory]
    [InlineData("fu", 87.23)]
    [InlineData("jakobs1", 81.6)]
    public void Classic_strips_come_near_the_published_density(string name, double least)
    {
        PolygonInstance instance = PolygonInstance.ReadStrip(ContourData.File(name + ".json"));
        ContourResult result = ContourLayout.Solve(
            ContourProblem.On(new ContourStrip(instance.Width), 0, ContourData.Pieces(instance)), new(Iterations: 3000), null, default);

        PolygonAsk ask = new([PolygonAsk.Rectangle(result.LengthMm, instance.Width)], 0, 0, 1e-6 * instance.Width);
        Assert.Empty(ContourData.Faults(instance, result, ask));
        double density = 100 * instance.ItemArea / (instance.Width * result.LengthMm);
        Assert.InRange(density, least, 100);
        Assert.Equal(density / 100, result.FillShare, 9);
    }

    /// <summary>One board more than the proven optimum is found at once; the optimum is a jigsaw without any waste.</summary>
    [Theory]
    [InlineData("TA001", 3)]
    [InlineData("TV001C5", 5)]
    public void Jigsaw_boards_take_at_most_one_more_than_the_proven_optimum(string name, int optimum)
    {
        PolygonInstance instance = PolygonInstance.ReadBoards(ContourData.File(name + ".txt"));
        Assert.Equal(optimum, instance.ItemArea / (instance.Width * instance.Height), 9);
        ContourStock board = new("board", Shape.Of(new RectMm(0, 0, instance.Width, instance.Height)), null, 1);
        ContourResult result = ContourLayout.Solve(ContourProblem.On([board], 0, ContourData.Pieces(instance)), new(Iterations: 400), null, default);

        PolygonAsk ask = new([.. result.Sheets.Select(_ => PolygonAsk.Rectangle(instance.Width, instance.Height))], 0, 0, ContourData.SlackMm);
        Assert.Empty(ContourData.Faults(instance, result, ask));
        Assert.InRange(result.Sheets.Count, optimum, optimum + 1);
    }
}
