using Laydown.Demo.Art;
using Xunit;

namespace Laydown.Edges.Tests.Demo;

public sealed class CheckDigitPublishedTests
{
    /// <summary>Check digits printed by GS1 for these numbers [GS1-Check].</summary>
    [Theory]
    [InlineData("629104150021", "6291041500213")]
    [InlineData("730001100001", "7300011000017")]
    [InlineData("890400021003", "8904000210037")]
    public void Check_digits_are_those_of_printed_examples(string twelve, string whole) => Assert.Equal(whole, Codes.WithCheckDigit(twelve));
}
