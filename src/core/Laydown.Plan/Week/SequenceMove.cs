namespace Laydown.Plan.Week;

/// <summary>Two blocks of neighbours change places: from A = [First, Second), middle = [Second, Third), B = [Third, End) comes B, middle, A.</summary>
/// <remarks>With an empty middle a block is shifted; with blocks of one job two jobs are swapped. Blocks A and B are never empty.</remarks>
internal readonly record struct SequenceMove(int First, int Second, int Third, int End)
{
    /// <summary>The move so many steps further in a sweep.</summary>
    internal SequenceMove Further(SequenceRising rising, int steps) => new(
        First + ((rising & SequenceRising.First) != 0 ? steps : 0), Second + ((rising & SequenceRising.Second) != 0 ? steps : 0),
        Third + ((rising & SequenceRising.Third) != 0 ? steps : 0), End + ((rising & SequenceRising.End) != 0 ? steps : 0));
}
