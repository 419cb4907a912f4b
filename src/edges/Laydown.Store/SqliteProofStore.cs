using System.Text.Json;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Proof;
using Laydown.Store.Rows;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Store;

/// <summary>Proof links and answers in the shop's SQLite file, whose tables <see cref="SqliteShopStore.OpenAsync"/> makes.</summary>
/// <remarks>Every save is one transaction, flushed to the disk before it returns; a kill at any time leaves it whole or absent.</remarks>
public sealed class SqliteProofStore : IProofStore
{
    private readonly DbContextOptions<ShopContext> options;

    /// <summary>A store in the file at <paramref name="dbPath"/>.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public SqliteProofStore(string dbPath) => options = SqliteShopStore.Options(Path.GetFullPath(Bounds.Named(dbPath)));

    /// <inheritdoc/>
    public Task SaveLinkAsync(ProofLink link, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            ProofLinkRow? row = await context.ProofLinks.FindAsync([link.Id], cancellation);
            if (row is null)
                context.ProofLinks.Add(row = new() { Id = link.Id, ItemId = link.ItemId, Json = "" });
            row.ItemId = link.ItemId;
            row.Json = Json(link);
            return true;
        },
        cancellation);

    /// <inheritdoc/>
    public async Task<ProofLink?> LinkAsync(string linkId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        ProofLinkRow? row = await context.ProofLinks.AsNoTracking().FirstOrDefaultAsync(r => r.Id == linkId, cancellation);
        return row is null ? null : From<ProofLink>(row.Json);
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<ProofLink>> LinksAsync(string? itemId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<ProofLinkRow> rows = await context.ProofLinks.AsNoTracking().Where(r => itemId == null || r.ItemId == itemId).ToListAsync(cancellation);
        return [.. rows.Select(r => From<ProofLink>(r.Json)).OrderByDescending(l => l.Made).ThenBy(l => l.Id, StringComparer.Ordinal)];
    }

    /// <inheritdoc/>
    public Task<bool> AddAnswerAsync(ProofAnswer answer, int mostInAll, int mostLately, DateTimeOffset lately, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            long since = lately.ToUnixTimeSeconds();
            int all = await context.ProofAnswers.CountAsync(r => r.LinkId == answer.LinkId, cancellation);
            int late = await context.ProofAnswers.CountAsync(r => r.LinkId == answer.LinkId && r.AtSeconds >= since, cancellation);
            if (all >= mostInAll || late >= mostLately)
                return false;
            context.ProofAnswers.Add(new()
            {
                Id = answer.Id,
                LinkId = answer.LinkId,
                ItemId = answer.ItemId,
                AtSeconds = answer.At.ToUnixTimeSeconds(),
                Json = Json(answer),
            });
            return true;
        },
        cancellation);

    /// <inheritdoc/>
    public async Task<IReadOnlyList<ProofAnswer>> AnswersAsync(string itemId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<ProofAnswerRow> rows = await context.ProofAnswers.AsNoTracking().Where(r => r.ItemId == itemId).OrderBy(r => r.Number).ToListAsync(cancellation);
        return [.. rows.Select(r => From<ProofAnswer>(r.Json))];
    }

    /// <inheritdoc/>
    public Task<bool> SettleAsync(string itemId, string answerId, bool done, CancellationToken cancellation) => WriteAsync(
        async context =>
        {
            ProofAnswerRow? row = await context.ProofAnswers.FirstOrDefaultAsync(r => r.Id == answerId && r.ItemId == itemId, cancellation);
            if (row is null)
                return false;
            row.Json = Json(From<ProofAnswer>(row.Json) with { Done = done });
            return true;
        },
        cancellation);

    // The transaction locks other writers out from its start, so that what was counted still holds when the row goes in.
    private async Task<bool> WriteAsync(Func<ShopContext, Task<bool>> change, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        if (!await change(context))
            return false;
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return true;
    }

    private static string Json<T>(T value) => JsonSerializer.Serialize(value, ShopJson.Compact);

    private static T From<T>(string json) =>
        JsonSerializer.Deserialize<T>(json, ShopJson.Compact) ?? throw new InvalidDataException("The store: found null; wanted a record.");
}
