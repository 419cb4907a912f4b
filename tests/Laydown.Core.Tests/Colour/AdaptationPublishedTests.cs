using Laydown.Colour.Spaces;

namespace Laydown.Core.Tests.Colour;

/// <summary>Adaptation against its published matrix.</summary>
public sealed class AdaptationPublishedTests
{
    /// <summary>D65 to D50 by Bradford, as published widely for whites 0.95047, 1, 1.08883 and 0.96422, 1, 0.82521 (from memory); 7 decimals.</summary>
    private static readonly double[][] Printed =
    [
        [1.0478112, 0.0228866, -0.0501270],
        [0.0295424, 0.9904844, -0.0170491],
        [-0.0092345, 0.0150436, 0.7521316],
    ];

    [Fact]
    public void Bradford_from_D65_to_D50_is_the_printed_matrix()
    {
        Xyz from = new(0.95047, 1, 1.08883), to = new(0.96422, 1, 0.82521);
        Xyz[] columns = [Bradford.Adapt(new(1, 0, 0), from, to), Bradford.Adapt(new(0, 1, 0), from, to), Bradford.Adapt(new(0, 0, 1), from, to)];
        for (int column = 0; column < 3; column++)
        {
            // The printed matrix was made with a rounded inverse: 2e-6 covers it.
            Assert.Equal(Printed[0][column], columns[column].X, tolerance: 2e-6);
            Assert.Equal(Printed[1][column], columns[column].Y, tolerance: 2e-6);
            Assert.Equal(Printed[2][column], columns[column].Z, tolerance: 2e-6);
        }
    }
}
