namespace Laydown.Bench.Layout;

/// <summary>All families the bench can read.</summary>
internal static class LayoutFamilies
{
    /// <summary>Asked in this order.</summary>
    public static IReadOnlyList<ILayoutFamily> All { get; } =
    [
        new PlatesFamily(),
        new CutStockFamily(),
        new GangFamily(),
        new IrregularStripFamily(),
        new IrregularBoardsFamily(),
        new StripFamily(),
        new LaneFamily(),
        new PanelFamily(),
        new FreeBoardsFamily(),
        new ShopDayFamily(),
        new GuillotineBoardsFamily(),
        new SeveralSizesFamily(),
    ];
}
