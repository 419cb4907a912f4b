using Laydown.Plan.Orders;

namespace Laydown.Core.Tests.Plan;

public sealed class FinishingPlacesLawTests
{
    /// <summary>A pocket 100 mm flat is 200 mm around: geometry of the circle.</summary>
    [Fact]
    public void A_pocket_100_mm_flat_takes_a_pole_of_63_7_mm_at_most() => Assert.Equal(63.7, FinishingPlaces.ThickestPoleMm(100), tolerance: 0.05);
}
