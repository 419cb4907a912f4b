namespace Laydown.Shop.Run;

/// <summary>What somebody says of the first piece of a run.</summary>
/// <param name="Made">Numbers of the checks that were made and were good, from 1 in the order of the set-up sheet.</param>
/// <param name="By">Who, by name.</param>
/// <param name="Notes">What is worth knowing the next time; null or empty for nothing.</param>
public sealed record FirstPieceApproval(IReadOnlyList<int> Made, string By, string? Notes = null);
