namespace Laydown.Shop.Week;

/// <summary>A step of a run at a bench, with the shop's clock.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Step">What is done.</param>
/// <param name="Place">Its place at the bench, from 1.</param>
/// <param name="Come">When it comes there.</param>
/// <param name="Start">When work on it begins.</param>
/// <param name="End">When it is done.</param>
/// <param name="Behind">Runs that are worked on at the bench while it waits, in turn; empty where it does not wait for any.</param>
public sealed record WeekVisitView(string RunId, string Step, int Place, DateTimeOffset Come, DateTimeOffset Start, DateTimeOffset End, IReadOnlyList<string> Behind);
