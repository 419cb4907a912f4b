using Laydown.Colour.Fits;

namespace Laydown.Core.Tests.Colour.Fits;

/// <summary>The blocked factorisation is the plain one, sizes below, at and beyond its blocks.</summary>
public sealed class CholeskyLawTests
{
    [Theory]
    [InlineData(1), InlineData(3), InlineData(64), InlineData(65), InlineData(131), InlineData(203)]
    public void Blocks_give_what_the_plain_triple_loop_gives(int size)
    {
        double[] matrix = Matrix(size), fast = [.. matrix], plain = [.. matrix];
        Assert.True(Cholesky.Factor(fast, size, TestContext.Current.CancellationToken));
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = plain[(i * size) + j];
                for (int k = 0; k < j; k++)
                    sum -= plain[(i * size) + k] * plain[(j * size) + k];
                plain[(i * size) + j] = i == j ? Math.Sqrt(sum) : sum / plain[(j * size) + j];

                // Rounding of some hundred products of numbers up to 80.
                Assert.Equal(plain[(i * size) + j], fast[(i * size) + j], 1e-10);
            }
        }
    }

    [Fact]
    public void Solutions_and_the_inverse_diagonal_put_the_matrix_back()
    {
        const int size = 131;
        double[] matrix = Matrix(size), factor = [.. matrix];
        Cholesky.Factor(factor, size, TestContext.Current.CancellationToken);
        double[] diagonal = Cholesky.InverseDiagonal(factor, size, TestContext.Current.CancellationToken);
        for (int column = 0; column < size; column += 26)
        {
            double[] unit = new double[size];
            unit[column] = 1;
            Cholesky.Solve(factor, size, unit);
            Assert.Equal(unit[column], diagonal[column], 1e-8 * unit[column]);
            for (int row = 0; row < size; row++)
            {
                double product = Enumerable.Range(0, size).Sum(k => matrix[(Math.Max(row, k) * size) + Math.Min(row, k)] * unit[k]);
                Assert.Equal(row == column ? 1 : 0, product, 1e-8);
            }
        }
    }

    [Fact]
    public void A_matrix_that_is_not_positive_is_told() =>
        Assert.False(Cholesky.Factor([1, 0, 2, 1], 2, TestContext.Current.CancellationToken));

    private static double[] Matrix(int size)
    {
        double[] matrix = new double[size * size];
        for (int i = 0; i < size; i++)
        {
            double[] one = Prints.Scatter(i + 1);
            for (int j = 0; j <= i; j++)
            {
                double[] other = Prints.Scatter(j + 1);
                double product = Enumerable.Range(0, 4).Aggregate(1.0, (p, k) => p * (1 + (one[k] * other[k]) + Math.Exp(-Math.Abs(one[k] - other[k]))));
                matrix[(i * size) + j] = product + (i == j ? 1e-2 : 0);
            }
        }

        return matrix;
    }
}
