using System.Text.Json;
using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Shop;
using Laydown.Shop.Press;
using Laydown.Store.Rows;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Store;

/// <summary>The stock room in the shop's SQLite file, whose tables <see cref="SqliteShopStore.OpenAsync"/> makes.</summary>
/// <remarks>Every change is one transaction that locks other writers out before the lots are read, flushed to the disk before it returns; a kill at any time leaves it whole or absent.</remarks>
public sealed class SqliteStockRoom : IStockRoom
{
    private readonly DbContextOptions<ShopContext> options;

    /// <summary>A room in the file at <paramref name="dbPath"/>.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public SqliteStockRoom(string dbPath) => options = SqliteShopStore.Options(Path.GetFullPath(Bounds.Named(dbPath)));

    /// <inheritdoc/>
    public async Task<IReadOnlyList<StockLot>> LotsAsync(CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        return await LotsAsync(context, cancellation);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<StockMove>> MovesAsync(string? lotId, int most, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<StockMoveRow> rows = await context.StockMoves.AsNoTracking().Where(r => lotId == null || r.LotId == lotId)
            .OrderByDescending(r => r.Number).Take(most).ToListAsync(cancellation);
        return [.. rows.Select(r => From<StockMove>(r.Json))];
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<StockMove>> MovesOfRunAsync(string runId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        return await MovesOfRunAsync(context, runId, cancellation);
    }

    /// <inheritdoc/>
    public Task<Reading<StockChange>> ChangeAsync(Func<IReadOnlyList<StockLot>, Reading<StockChange>> change, CancellationToken cancellation) =>
        ChangeAsync(async context => change(await LotsAsync(context, cancellation)), cancellation);

    /// <inheritdoc/>
    public Task<Reading<StockChange>> ChangeAsync(
        string runId, Func<IReadOnlyList<StockLot>, IReadOnlyList<StockMove>, Reading<StockChange>> change, CancellationToken cancellation) => ChangeAsync(
        async context => change(await LotsAsync(context, cancellation), await MovesOfRunAsync(context, runId, cancellation)), cancellation);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<ReorderPoint>> PointsAsync(CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<StockPointRow> rows = await context.StockPoints.AsNoTracking().OrderBy(r => r.StockId).ToListAsync(cancellation);
        return [.. rows.Select(r => From<ReorderPoint>(r.Json))];
    }

    /// <inheritdoc/>
    public async Task SetPointAsync(ReorderPoint point, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        StockPointRow? row = await context.StockPoints.FindAsync([point.StockId], cancellation);
        if (row is null)
            context.StockPoints.Add(row = new() { StockId = point.StockId, Json = "" });
        row.Json = Json(point);
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
    }

    private async Task<Reading<StockChange>> ChangeAsync(Func<ShopContext, Task<Reading<StockChange>>> change, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        Reading<StockChange> made = await change(context);
        if (!made.IsTaken)
            return made;
        foreach (StockLot lot in made.Value.Lots)
            await PutAsync(context, lot, cancellation);
        context.StockMoves.AddRange(made.Value.Moves.Select(m => new StockMoveRow { LotId = m.LotId, RunId = m.RunId, Json = Json(m) }));
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return made;
    }

    private static async Task<IReadOnlyList<StockMove>> MovesOfRunAsync(ShopContext context, string runId, CancellationToken cancellation)
    {
        List<StockMoveRow> rows = await context.StockMoves.AsNoTracking().Where(r => r.RunId == runId).OrderBy(r => r.Number).ToListAsync(cancellation);
        return [.. rows.Select(r => From<StockMove>(r.Json))];
    }

    private static async Task<IReadOnlyList<StockLot>> LotsAsync(ShopContext context, CancellationToken cancellation)
    {
        List<StockLotRow> rows = await context.StockLots.AsNoTracking().OrderBy(r => r.Id).ToListAsync(cancellation);
        return [.. rows.Select(r => From<StockLot>(r.Json))];
    }

    private static async Task PutAsync(ShopContext context, StockLot lot, CancellationToken cancellation)
    {
        StockLotRow? row = await context.StockLots.FindAsync([lot.Id], cancellation);
        if (row is null)
            context.StockLots.Add(row = new() { Id = lot.Id, StockId = lot.StockId, Place = "", Json = "" });
        (row.StockId, row.Place, row.Json) = (lot.StockId, lot.Place, Json(lot));
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, ShopJson.Compact);

    private static T From<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, ShopJson.Compact) ?? throw new InvalidDataException("The store: found null; wanted a record.");
}
