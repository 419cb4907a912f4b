using Laydown.Measures;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Run;

/// <summary>What a day's work came to.</summary>
/// <param name="Stations">Its stations in the order of the work.</param>
/// <param name="Orders">Orders taken.</param>
/// <param name="Refused">Order files refused.</param>
/// <param name="Runs">Runs that are made, by id.</param>
/// <param name="Aborted">Ids of runs that could not be made.</param>
/// <param name="Held">Items held back, by id.</param>
/// <param name="Quotes">Ids of orders quoted.</param>
/// <param name="Faults">Faults that held up runs and quotes; those of items stand with the items.</param>
public sealed record DayReport(
    IReadOnlyList<DayStation> Stations,
    int Orders,
    IReadOnlyList<RefusedOrder> Refused,
    IReadOnlyList<RunRecord> Runs,
    IReadOnlyList<string> Aborted,
    IReadOnlyList<ItemRecord> Held,
    IReadOnlyList<string> Quotes,
    IReadOnlyList<InputFault> Faults);
