namespace Laydown.Plan.Week;

/// <summary>Two blocks of neighbours change places: from A = [First, Second), middle = [Second, Third), B = [Third, End) comes B, middle, A.</summary>
/// <remarks>With an empty middle a block is shifted; with blocks of one job two jobs are swapped. Blocks A and B are never empty.</remarks>
internal readonly record struct SequenceMove(int First, int Second, int Third, int End);
