using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>An order made in one way, to be compared with others.</summary>
/// <param name="Name">What differs, such as <c>mode photo</c>.</param>
/// <param name="Cost">Cost without overhead and margin; null where it cannot be made so.</param>
/// <param name="Price">Price without tax, lines rounded by the shop's policy.</param>
/// <param name="Minutes">Time at the press, min.</param>
/// <param name="InkMl">Ink, ml.</param>
/// <param name="Sheets">Sheets that go through the press.</param>
/// <param name="Because">Runs, modes and stocks; or why it cannot be made so.</param>
public sealed record QuoteScenario(string Name, Money? Cost, Money? Price, double Minutes, double InkMl, int Sheets, string Because);
