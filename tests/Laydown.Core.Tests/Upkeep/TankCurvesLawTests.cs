using System.Xml.Linq;
using Laydown.Plan.Drawings;
using Laydown.Plan.Upkeep;
using Xunit;

namespace Laydown.Core.Tests.Upkeep;

public sealed class TankCurvesLawTests
{
    [Fact]
    public void Every_tank_is_named_every_top_up_numbered_once_and_no_mark_leaves_the_paper()
    {
        UpkeepRequest request = Cares.Request(Cares.Press(), Cares.At(1, 6), Cares.At(8, 6), Cares.Use("R-1", Cares.At(1, 8), 9, 4000), Cares.Use("R-2", Cares.At(3, 8), 9, 3000, tank: "T-White"));
        UpkeepPlan plan = UpkeepPlanner.Plan(request).Value;
        XDocument drawing = XDocument.Parse(TankCurves.Draw(plan, Cares.Open.ClosedBetween(plan.From, plan.To, null)));
        XElement[] marks = [.. drawing.Descendants()];
        Assert.All(plan.Tanks, t => Assert.Contains(marks, m => m.Name.LocalName == "text" && m.Value == t.TankId));
        XElement[] circles = [.. marks.Where(m => m.Name.LocalName == "circle")];

        // One circle more stands in the key.
        Assert.Equal(TankCurves.Numbered(plan).Count() + 1, circles.Length);
        double[] box = [.. ((string)drawing.Root!.Attribute("viewBox")!).Split(' ').Select(v => double.Parse(v, System.Globalization.CultureInfo.InvariantCulture))];
        Assert.All(circles, c => Assert.InRange((double)c.Attribute("cx")!, 0, box[2]));
        Assert.All(circles, c => Assert.InRange((double)c.Attribute("cy")!, 0, box[3]));
        foreach (int number in Enumerable.Range(1, circles.Length - 1).Where(n => n > 1))
            Assert.Single(marks, m => m.Name.LocalName == "text" && m.Value == Invariant($"{number}"));
    }

    [Fact]
    public void A_plan_without_a_tank_is_refused() => Assert.Throws<ArgumentException>(() =>
        TankCurves.Draw(new("p", Cares.At(1, 6), Cares.At(2, 6), [], [], [], [], [], []), []));
}
