using Laydown.Press.Handling;
using Xunit;

namespace Laydown.Core.Tests.Press;

public sealed class LiftingPublishedTests
{
    /// <summary>
    /// Loading punch press stock, [NIOSH1994]: H 23 in, V 15 in at the start (grip fair, 0.95) and 63 in at the end (good), D 48 in. The manual prints 16.3 and 14.5 lb with multipliers
    /// rounded from its tables; unrounded 16.0 and 14.3.
    /// </summary>
    [Theory, InlineData(15, 0.95, 16.0), InlineData(63, 1.0, 14.3)]
    public void The_worked_example_has_its_limits(double heightIn, double grip, double pounds) =>
        Assert.Equal(pounds, Lifting.LimitLb(23, heightIn, 48, 0, 1, grip), tolerance: 0.1);

    /// <summary>The metric form of the same manual rounds 10 in to 25 cm and 51 lb to 23 kg: 1.6 % and 0.6 %, together within 2.3 %.</summary>
    [Fact]
    public void Both_forms_agree_within_their_rounding() =>
        Assert.Equal(Lifting.LimitLb(23, 15, 48, 0, 1, 0.95) * 0.45359237, Lifting.LimitKg(23 * 2.54, 15 * 2.54, 48 * 2.54, 0, 1, 0.95), tolerance: 0.023 * 7.3);

    [Fact]
    public void One_person_lays_a_sheet_of_at_most_10_5_kg() => Assert.Equal(10.5, Lifting.OneSheetKg, tolerance: 0.05);

    [Fact]
    public void Out_of_reach_nothing_may_be_lifted() => Assert.Equal((0, 0, 0), (Lifting.LimitKg(70, 75, 30), Lifting.LimitKg(45, 180, 30), Lifting.LimitLb(26, 30, 20)));
}
