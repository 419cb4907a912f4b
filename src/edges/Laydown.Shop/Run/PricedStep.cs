namespace Laydown.Shop.Run;

/// <summary>How far pricing of an order is.</summary>
/// <param name="OrderId">The order.</param>
/// <param name="What">What is priced now, in words, such as <c>TW-1-1 at 10 pieces</c>.</param>
/// <param name="Done">Priced before.</param>
/// <param name="All">To be priced in all.</param>
public sealed record PricedStep(string OrderId, string What, int Done, int All)
{
    /// <summary>One line, such as <c>TW-1-1 at 10 pieces, 3 of 12</c>.</summary>
    public override string ToString() => Invariant($"{What}, {Done + 1} of {All}");
}
