namespace Laydown.Shop.Layers;

/// <summary>Why a part of the pictures cannot be reached.</summary>
/// <param name="Reason">Short stable name of the reason, such as <c>nightTooBright</c>.</param>
/// <param name="Words">The reason in a sentence.</param>
/// <param name="Percent">Share of the piece, percent.</param>
public sealed record LookReason(string Reason, string Words, double Percent);
