using Laydown.Layout.Rectangles;

namespace Laydown.Layout.FreePacking;

/// <summary>Turns filled sheets into the records all rectangle searches share.</summary>
internal static class FreeWriter
{
    internal static RectLayout Write(FreeModel model, FreeLayout layout) =>
        new([.. layout.Sheets.Select(s => Sheet(model, s))], layout.Left);

    private static RectSheet Sheet(FreeModel model, FreeSheet sheet)
    {
        RectSpot[] spots = [.. sheet.Board.Spots.ToArray()
            .OrderBy(s => s.Place.Y).ThenBy(s => s.Place.X)
            .Select(s => new RectSpot(s.Type, new(s.Place.X, s.Place.Y, s.Place.W, s.Place.H), s.Turned))];
        RectStock stock = model.Problem.Stocks[sheet.Board.Stock];
        return new(sheet.Board.Stock, sheet.Repeats, spots, FreeOffcuts.Of(stock, sheet.Board.Spots, model.Problem.Rules.OffcutLeastSide));
    }
}
