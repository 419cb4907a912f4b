namespace Laydown.Plan.Costs;

/// <summary>One item of a quote from a file: what it takes once and for each piece.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Text">What it is, as the customer reads it.</param>
/// <param name="Pieces">How many.</param>
/// <param name="SetUpMinutes">Time at the press once, min.</param>
/// <param name="MinutesEach">Time at the press for each piece, min.</param>
/// <param name="Materials">Boards, rolls and what else it uses up.</param>
/// <param name="Inks">Ink.</param>
/// <param name="Finishing">Work after printing at the shop's rates; null for none.</param>
/// <param name="Bought">What is bought in: work of others, freight; null for none.</param>
public sealed record QuoteJobItem(
    string Id, string Text, int Pieces, double SetUpMinutes, double MinutesEach, IReadOnlyList<JobMaterial> Materials, IReadOnlyList<JobInk> Inks,
    IReadOnlyList<JobFinishing>? Finishing = null, IReadOnlyList<JobBought>? Bought = null);
