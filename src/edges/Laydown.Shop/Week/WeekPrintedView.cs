namespace Laydown.Shop.Week;

/// <summary>A run that is printed and still goes over benches.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Title">What is in it.</param>
/// <param name="Printed">When the log says it was printed.</param>
/// <param name="Ready">When its work after the press is done.</param>
/// <param name="Due">The day it is due.</param>
/// <param name="LateMinutes">Minutes late; 0 where it is not.</param>
public sealed record WeekPrintedView(string RunId, string Title, DateTimeOffset Printed, DateTimeOffset Ready, DateOnly Due, int LateMinutes);
