using System.Text.Json;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Press;
using Laydown.Store.Rows;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Store;

/// <summary>What was read and done at presses, in the shop's SQLite file, whose tables <see cref="SqliteShopStore.OpenAsync"/> makes.</summary>
/// <remarks>Every change is one transaction that locks other writers out before the page is read.</remarks>
public sealed class SqlitePressCareBook : IPressCareBook
{
    private readonly DbContextOptions<ShopContext> options;

    /// <summary>A book in the file at <paramref name="dbPath"/>.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public SqlitePressCareBook(string dbPath) => options = SqliteShopStore.Options(Path.GetFullPath(Bounds.Named(dbPath)));

    /// <inheritdoc/>
    public async Task<PressCarePage?> ReadAsync(string pressId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        PressCareRow? row = await context.PressCare.AsNoTracking().FirstOrDefaultAsync(r => r.PressId == pressId, cancellation);
        return row is null ? null : From(row.Json);
    }

    /// <inheritdoc/>
    public async Task<Reading<PressCarePage>> ChangeAsync(string pressId, Func<PressCarePage?, Reading<PressCarePage>> change, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        PressCareRow? row = await context.PressCare.FindAsync([pressId], cancellation);
        Reading<PressCarePage> made = change(row is null ? null : From(row.Json));
        if (!made.IsTaken)
            return made;
        if (row is null)
            context.PressCare.Add(row = new() { PressId = pressId, Json = "" });
        row.Json = JsonSerializer.Serialize(made.Value, ShopJson.Compact);
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return made;
    }

    private static PressCarePage From(string json) =>
        JsonSerializer.Deserialize<PressCarePage>(json, ShopJson.Compact) ?? throw new InvalidDataException("The store: found null; wanted a record.");
}
