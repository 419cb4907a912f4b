namespace Laydown.Layout.Packing;

/// <summary>One sheet filled, and how often exactly this picture is wanted.</summary>
/// <param name="Spots">Pieces put down.</param>
/// <param name="Space">What is left bare.</param>
/// <param name="Repeats">How many sheets carry it.</param>
internal sealed record FilledSheet(IReadOnlyList<Spot> Spots, IFreeSpace Space, int Repeats)
{
    internal long UsedArea { get; } = Spots.Sum(s => s.Place.Area);
}
