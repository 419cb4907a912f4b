using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>Pieces that must be printed again, with cause and cost.</summary>
/// <param name="Cause">Why.</param>
/// <param name="Found">Where it was found.</param>
/// <param name="ItemId">The item; null for whatever was on the sheet.</param>
/// <param name="Pieces">How many pieces, at least 1.</param>
/// <param name="AreaM2">Material lost, m²; 0 or more.</param>
/// <param name="InkMl">Ink lost, ml; 0 or more.</param>
/// <param name="Minutes">Press and operator, minutes; 0 or more.</param>
/// <param name="Payer">Who pays.</param>
/// <param name="Cost">What it costs; 0 or more.</param>
/// <param name="Because">How the cost was reckoned, in one line.</param>
/// <param name="Action">What was done so that it does not happen again; null for nothing.</param>
public sealed record RemakeNote(
    RemakeCause Cause, RemakeFound Found, string? ItemId, int Pieces, double AreaM2, double InkMl, double Minutes, RemakePayer Payer, Money Cost, string Because,
    string? Action = null);
