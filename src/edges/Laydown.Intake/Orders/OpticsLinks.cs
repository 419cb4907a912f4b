using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Intake.Orders;

/// <summary>What in optics, ink sets and print conditions names optics or inks that are not there.</summary>
internal sealed class OpticsLinks(IReadOnlyList<InkSet> inkSets, IReadOnlyList<InkOptics> optics)
{
    /// <summary>Faults of optics: an ink set that is not there, or inks it does not have.</summary>
    public IEnumerable<InputFault> Of(string file, InkOptics own)
    {
        if (inkSets.FirstOrDefault(s => s.Id == own.InkSetId) is not { } set)
            return [new(file, null, "/inkSetId", own.InkSetId, "one of " + string.Join(", ", inkSets.Select(s => s.Id).Take(30)))];
        return own.Inks.Index().Where(i => set.Find(i.Item.Role) is null)
            .Select(i => new InputFault(file, null, Invariant($"/inks/{i.Index}/role"), i.Item.Role.ToString(), Invariant($"an ink of {set.Id}")));
    }

    /// <summary>Faults of an ink set.</summary>
    public IEnumerable<InputFault> Of(string file, InkSet set) => Named(file, set.OpticsId, set.Id);

    /// <summary>Faults of a print condition.</summary>
    public IEnumerable<InputFault> Of(string file, PrintCondition condition) => Named(file, condition.OpticsId, condition.InkSetId);

    private IEnumerable<InputFault> Named(string file, string? id, string inkSetId)
    {
        if (id is null)
            yield break;
        if (optics.FirstOrDefault(o => o.Id == id) is not { } found)
            yield return new(file, null, "/opticsId", id, "the id of a file in the folder optics");
        else if (found.InkSetId != inkSetId)
            yield return new(file, null, "/opticsId", Invariant($"{id}, read for {found.InkSetId}"), Invariant($"optics of {inkSetId}"));
    }
}
