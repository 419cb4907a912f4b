namespace Laydown.Shop.Run;

/// <summary>What a press file says about itself.</summary>
/// <param name="Columns">Pixels or dots across.</param>
/// <param name="Rows">Pixels or dots down.</param>
/// <param name="Inks">Inks in it.</param>
/// <param name="Bits">Bits of one value: 8 for contone, 1 or 2 for dots.</param>
/// <param name="ScanDpi">Values an inch across; 0 where the file does not say.</param>
/// <param name="FeedDpi">Values an inch down; 0 where the file does not say.</param>
/// <param name="InkNames">Names of the inks; may be fewer than the inks.</param>
public sealed record PressFileShape(int Columns, int Rows, int Inks, int Bits, double ScanDpi, double FeedDpi, IReadOnlyList<string> InkNames);
