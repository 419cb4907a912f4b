using Laydown.Plan.Costs;

namespace Laydown.Formats.Json;

/// <summary>What <c>catalogue/shop.json</c> says: who the shop is and what it charges.</summary>
/// <param name="Name">Name of the shop, for sheets and quotes.</param>
/// <param name="Invented">Whether it is invented for the demo.</param>
/// <param name="Rates">Its rates.</param>
/// <param name="Releasers">Who may release layouts to the press, by name; left out, anybody who gives a name.</param>
/// <param name="Address">Where its pages are served for tablets and phones, such as <c>http://press-room:5080</c>; codes on papers open them. Left out, codes hold the path alone.</param>
public sealed record ShopFile(string Name, bool Invented, ShopRates Rates, IReadOnlyList<string>? Releasers = null, string? Address = null);
