using Laydown.Plan.Calendar;
using Laydown.Plan.Costs;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>What the upkeep of one press is planned from.</summary>
/// <param name="Press">The press.</param>
/// <param name="InkSet">Its inks.</param>
/// <param name="Rates">What work costs.</param>
/// <param name="Calendar">When the shop works.</param>
/// <param name="State">The press as last read, not after <paramref name="From"/>.</param>
/// <param name="Packs">Ink on the shelf.</param>
/// <param name="Uses">Spans in which the press prints, not overlapping; those that end before the reading are in its levels already.</param>
/// <param name="From">Start of the time planned.</param>
/// <param name="To">Its end, at most <see cref="MostDays"/> later.</param>
/// <param name="Laid">Care as the week laid it; null where no week did.</param>
public sealed record UpkeepRequest(
    PressDescription Press,
    InkSet InkSet,
    ShopRates Rates,
    ShopCalendar Calendar,
    PressState State,
    IReadOnlyList<InkPack> Packs,
    IReadOnlyList<PressUse> Uses,
    DateTimeOffset From,
    DateTimeOffset To,
    LaidCare? Laid = null)
{
    /// <summary>Longest time that is planned, days.</summary>
    public const int MostDays = 370;

    /// <summary>How the press is kept fit: as its description says, else as usual.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public PressCare Care => Press.Care ?? PressCare.Usual(Press);
}
