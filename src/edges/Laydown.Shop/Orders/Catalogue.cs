using Laydown.Plan.Calendar;
using Laydown.Plan.Costs;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Shop.Orders;

/// <summary>What the shop has: presses, inks, stocks, print conditions, rates.</summary>
/// <param name="ShopName">Name of the shop, for sheets and quotes.</param>
/// <param name="Folder">Folder the catalogue was read from; profiles lie in its sub-folder <c>profiles</c>.</param>
/// <param name="Presses">Presses.</param>
/// <param name="InkSets">Ink sets.</param>
/// <param name="Stocks">Stocks.</param>
/// <param name="Conditions">Print conditions.</param>
/// <param name="Rates">Rates.</param>
public sealed record Catalogue(
    string ShopName,
    string Folder,
    IReadOnlyList<PressDescription> Presses,
    IReadOnlyList<InkSet> InkSets,
    IReadOnlyList<Stock> Stocks,
    IReadOnlyList<PrintCondition> Conditions,
    ShopRates Rates)
{
    /// <summary>Optics of ink sets; none in a shop that has read no chart of white steps.</summary>
    public IReadOnlyList<InkOptics> Optics { get; init; } = [];

    /// <summary>When the shop works; null in a shop without <c>calendar.json</c>.</summary>
    public ShopCalendar? Calendar { get; init; }

    /// <summary>Who may release layouts, by name; empty for anybody who gives a name.</summary>
    public IReadOnlyList<string> Releasers { get; init; } = [];

    /// <summary>Where the shop's pages are served, without a slash at the end; empty where the shop does not say.</summary>
    public string Address { get; init; } = "";

    /// <summary>The optics that hold for a print condition: its own, else those of its ink set, else null.</summary>
    public InkOptics? OpticsOf(PrintCondition condition) =>
        OpticsOf(condition.OpticsId) ?? OpticsOf(InkSets.FirstOrDefault(s => string.Equals(s.Id, condition.InkSetId, StringComparison.Ordinal))?.OpticsId);

    private InkOptics? OpticsOf(string? id) => id is null ? null : Optics.FirstOrDefault(o => string.Equals(o.Id, id, StringComparison.Ordinal));
}
