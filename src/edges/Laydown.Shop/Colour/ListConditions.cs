using Laydown.Press.Conditions;

namespace Laydown.Shop.Colour;

/// <summary>Lists the print conditions as they stand on the disk now.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
public sealed class ListConditions(ShopFolder folder, IColourFiles files)
{
    /// <summary>All that can be read, by id.</summary>
    public IReadOnlyList<PrintCondition> List() => new ConditionShelf(folder, files).All();
}
