using Laydown.Plan.Runs;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Shop.Build;

/// <summary>The part of the catalogue that choosing a press looks at.</summary>
internal static class PressRooms
{
    /// <summary>Presses, inks, stocks and conditions of the shop.</summary>
    public static PressRoom Of(Catalogue catalogue) =>
        new(catalogue.Presses, catalogue.InkSets, catalogue.Stocks, catalogue.Conditions) { Bands = BandScores.Of };
}
