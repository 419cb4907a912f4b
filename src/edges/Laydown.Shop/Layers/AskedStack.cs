using Laydown.Press.Stacks;

namespace Laydown.Shop.Layers;

/// <summary>A stack that is asked about without any order.</summary>
/// <param name="StockId">The sheet.</param>
/// <param name="InkSetId">The inks.</param>
/// <param name="Layers">Layers in print order, each face from the sheet outward.</param>
/// <param name="ViewedFrom">The face toward the viewer.</param>
public sealed record AskedStack(string StockId, string InkSetId, IReadOnlyList<AskedLayer> Layers, SheetFace ViewedFrom);
