using Laydown.Artwork.Checks;
using Laydown.Plan.Orders;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;

namespace Laydown.Shop.Check;

/// <summary>What the artwork of an order line must serve.</summary>
public static class CheckWishes
{
    /// <summary>The wish for a line on the press chosen for it.</summary>
    /// <param name="item">The line.</param>
    /// <param name="choice">The press and its mode; null where no press can print it, then a middling mode is taken (common practice, no source).</param>
    public static CheckWish Of(Item item, PressChoice? choice)
    {
        Mode? mode = choice?.Press.FindMode(choice.Mode.ModeId);
        return new(
            item.Finished,
            item.BleedMm,
            item.ArtworkScale,
            item.ViewingDistanceM,
            mode?.ScanDpi ?? 600,
            mode?.FeedDpi ?? 600,
            mode?.ContonePpi ?? 150,
            choice?.Condition.TotalLimitPercent ?? 300,
            item.Build.PrintsWhite,
            item.Build.White is WhiteSource.NamedSeparation ? item.Build.WhiteSeparation : null,
            item.Build.White is WhiteSource.Alpha,
            item.Build.Pictures > 1,
            item.Finishing.Any(f => f.Kind == FinishingKind.CutContour),
            item.Build.LastPage);
    }
}
