using Laydown.Web.Forms;

namespace Laydown.Web.Press;

/// <summary>The forms of the stock room, with the fields of a move that each of their fields fills.</summary>
public static class StockFields
{
    /// <summary>Goods that come in.</summary>
    public static readonly FormFields Receive = new(
        "receive", new("stock", "stock", "Stock", "stockId"), new("quantity", "in-quantity", "How many, or m", "/moves/0/quantity"), new("place", "in-place", "Place", "/moves/0/lot/place"),
        new("maker", "maker", "Maker’s lot"), new("width", "width", "Width of a rest, mm", "/moves/0/lot/widthMm"), new("length", "length", "Length of a rest, mm"), new("by", "in-by", "Who", "/moves/0/by"));

    /// <summary>What is done with a lot.</summary>
    public static readonly FormFields Lot = new(
        "lot", new("lot", "lot", "Lot", "/moves/0/lotId"), new("kind", "kind", "What"), new("quantity", "quantity", "How many, or m", "/moves/0/quantity"),
        new("place", "lot-place", "Place, where put elsewhere", "/moves/0/place"), new("why", "why", "Why"), new("by", "by", "Who", "/moves/0/by"));

    /// <summary>What is done with the stock of a run.</summary>
    public static readonly FormFields Run = new("runs", new("by", "run-by", "Who"), new("place", "run-place", "Place of the rests"));

    /// <summary>From when on a stock is ordered.</summary>
    public static readonly FormFields Reorder = new(
        "reorder", new("stockId", "point-stock", "Stock"), new("at", "point-at", "Order at, free boards, blanks or m"), new("to", "point-to", "Up to"), new("by", "point-by", "Who"));
}
