using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Shows a print condition with its model, residuals and later readings, as they stand on the disk now.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads.</param>
public sealed class ShowCondition(ShopFolder folder, IColourFiles files)
{
    /// <summary>The condition, or why it cannot be shown.</summary>
    public Reading<ConditionView> Show(string conditionId) => new ConditionShelf(folder, files).View(conditionId);
}
