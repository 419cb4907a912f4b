using Laydown.Measures;

namespace Laydown.Plan.Costs;

/// <summary>Overhead put on a run, one kind of it.</summary>
/// <param name="Name">The kind.</param>
/// <param name="On">What it is spread on.</param>
/// <param name="Quantity">How much of that the run has: money units or h.</param>
/// <param name="PerUnit">Overhead for each unit of it.</param>
/// <param name="Amount">Quantity × rate, to the cent.</param>
/// <param name="Because">The same in one line.</param>
public sealed record OverheadLine(string Name, OverheadBase On, decimal Quantity, decimal PerUnit, Money Amount, string Because);
