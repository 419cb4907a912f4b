namespace Laydown.Shop.Proof;

/// <summary>An answer as it comes from the page: not yet looked at.</summary>
/// <param name="Verdict">Approved or to be changed.</param>
/// <param name="From">Name given.</param>
/// <param name="Text">Comment given.</param>
/// <param name="Pin">Place given, or null.</param>
public sealed record ProofReply(ProofVerdict Verdict, string From, string Text, ProofPin? Pin);
