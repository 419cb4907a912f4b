namespace Laydown.Shop.Run;

/// <summary>The approval of a first piece, as it stands in the log.</summary>
/// <param name="By">Who.</param>
/// <param name="At">When.</param>
/// <param name="Words">What was written down.</param>
public sealed record ApprovedPiece(string By, DateTimeOffset At, string Words);
