using Laydown.Plan.Drawings;
using Laydown.Plan.Week;

namespace Laydown.Shop.Week;

/// <summary>The week for the eye and the hand: its plan in minutes since the start of the week, and how to draw it.</summary>
/// <param name="Presses">The presses with the spans in which they are worked.</param>
/// <param name="Plan">What is on them.</param>
/// <param name="Draw">The drawing, so many times the usual width.</param>
/// <param name="InstantOf">The instant of a minute, by the shop's clock.</param>
public sealed record WeekChart(IReadOnlyList<WeekPress> Presses, WeekPlan Plan, Func<double, WeekDrawn> Draw, Func<int, DateTimeOffset> InstantOf);
