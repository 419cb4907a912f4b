using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Plan.Upkeep;
using Laydown.Shop.Press;

namespace Laydown.Intake.Press;

/// <inheritdoc/>
public sealed class CareFiles : ICareFiles
{
    /// <inheritdoc/>
    public Reading<UpkeepRequest> Upkeep(string path) => LaydownJson.ReadFile<UpkeepRequest>(path).Then(request =>
    {
        IReadOnlyList<InputFault> faults = UpkeepFaults.Of(request, Path.GetFileName(path));
        return faults.Count > 0 ? Reading.Refused<UpkeepRequest>(faults) : Reading.Of(request);
    });

    /// <inheritdoc/>
    public Reading<StockRoomFile> Room(string path) => LaydownJson.ReadFile<StockRoomFile>(path).Then(room =>
    {
        List<InputFault> faults = [.. room.Lots.Index().Where(l => room.Lots.Take(l.Index).Any(e => e.Id == l.Item.Id))
            .Select(l => new InputFault(Path.GetFileName(path), null, Invariant($"/lots/{l.Index}/id"), l.Item.Id, "each id once"))];
        return faults.Count > 0 ? Reading.Refused<StockRoomFile>(faults) : Reading.Of(room);
    });
}
