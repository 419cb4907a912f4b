using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;
using Laydown.Shop.Orders;

namespace Laydown.Shop.Colour;

/// <summary>Measures how much ink a piece takes, through the same stages that make its press files.</summary>
public interface IInkMeasure
{
    /// <summary>Mean laydown of every ink in every layer over the printed area of one piece.</summary>
    Task<Reading<IReadOnlyList<LayerInk>>> MeasureAsync(
        ItemRecord item, PrintCondition condition, InkSet inkSet, string profilePath, CancellationToken cancellation);
}
