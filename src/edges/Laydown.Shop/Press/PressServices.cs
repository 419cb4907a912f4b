using Laydown.Shop.Log;
using Laydown.Shop.Orders;
using Laydown.Shop.Week;

namespace Laydown.Shop.Press;

/// <summary>What the shop can do at its presses and in its stock room.</summary>
/// <param name="Upkeep">Plans the upkeep of a press.</param>
/// <param name="Read">Writes down what was read and done at a press.</param>
/// <param name="Book">What was written down.</param>
/// <param name="Stock">Shows the stock room.</param>
/// <param name="Receive">Takes goods in.</param>
/// <param name="Move">Does moves in the room.</param>
/// <param name="RunStock">Keeps back and takes the stock of runs.</param>
/// <param name="Labels">Makes labels.</param>
/// <param name="Levels">Tells how full tanks are.</param>
/// <param name="Supply">Tells whether the room holds what a run takes.</param>
/// <param name="Reorder">Sets from when on stocks are ordered.</param>
public sealed record PressServices(
    PlanUpkeep Upkeep, ReadPress Read, IPressCareBook Book, ShowStock Stock, ReceiveStock Receive, MoveStock Move, RunStock RunStock, StockLabels Labels, TankLevels Levels, SupplyOfRun Supply,
    SetReorderPoint Reorder)
{
    /// <summary>All of it for one shop.</summary>
    /// <param name="catalogue">What the shop has; its stocks follow the room where they are <see cref="ShelvedStocks"/>.</param>
    /// <param name="store">What it remembers.</param>
    /// <param name="book">What was read and done at its presses.</param>
    /// <param name="room">Its stock room.</param>
    /// <param name="papers">Writes labels.</param>
    /// <param name="clock">Tells the time.</param>
    /// <param name="week">The week; upkeep follows it. Null where nobody plans one.</param>
    /// <param name="log">The log: runs that are done, ink as read. Null where the shop keeps none.</param>
    public static PressServices Of(
        Catalogue catalogue, IShopStore store, IPressCareBook book, IStockRoom room, IPressPapers papers, TimeProvider clock, PlanWeek? week = null, ILogStore? log = null)
    {
        MoveStock move = new(catalogue, room);
        TankLevels levels = new(book, log);
        return new(
            new(catalogue, store, book, week, levels, log), new(catalogue, book, clock, levels), book, new(catalogue, store, room, log), new(catalogue, move, clock), move,
            new(catalogue, store, move, clock, log is null ? null : new(catalogue, store, log, room, clock)), new(catalogue, room, papers), levels, new(catalogue, room), new(catalogue, room, clock));
    }
}
