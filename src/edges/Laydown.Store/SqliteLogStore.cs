using System.Text.Json;
using Laydown.Measures;
using Laydown.Plan.Log;
using Laydown.Shop;
using Laydown.Shop.Log;
using Laydown.Store.Rows;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Store;

/// <summary>The log in the shop's SQLite file, whose tables <see cref="SqliteShopStore.OpenAsync"/> makes.</summary>
/// <remarks>
/// Rows are appended and never changed but for the mark of one that was struck. Pages go along an index by time, so that a late page costs no more than the first.
/// Every append is one transaction, flushed to the disk before it returns; a kill at any time leaves it whole or absent.
/// </remarks>
public sealed class SqliteLogStore : ILogStore
{
    private const string Done = "Done";

    // So many runs that stopped after an instant are looked at: one press prints one at a time.
    private const int MostOthers = 50;
    private readonly DbContextOptions<ShopContext> options;

    /// <summary>A store in the file at <paramref name="dbPath"/>.</summary>
    /// <exception cref="ArgumentException">The path is empty.</exception>
    public SqliteLogStore(string dbPath) => options = SqliteShopStore.Options(Path.GetFullPath(Bounds.Named(dbPath)));

    /// <inheritdoc/>
    public async Task<Reading<LogEntry>> AppendAsync(LogEntry entry, Func<LogBefore, Reading<LogEntry>> judge, CancellationToken cancellation)
    {
        // The transaction locks other writers out from its start, so that what the judge saw still holds when the row goes in.
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        LogRow? struck = entry.Strikes is { } number ? await context.Log.FirstOrDefaultAsync(r => r.Number == number && !r.Struck, cancellation) : null;
        Reading<LogEntry> judged = judge(await BeforeAsync(context, entry, struck, cancellation));
        if (!judged.IsTaken)
            return judged;

        LogRow row = RowOf(judged.Value);
        context.Log.Add(row);
        struck?.Struck = true;
        await context.SaveChangesAsync(cancellation);
        await transaction.CommitAsync(cancellation);
        return Reading.Of(EntryOf(row));
    }

    /// <summary>Appends many entries that were judged elsewhere, in one transaction: for a log that is taken over or simulated.</summary>
    public async Task AppendAllAsync(IReadOnlyList<LogEntry> entries, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellation);
        foreach (LogEntry[] part in entries.Chunk(2000))
        {
            context.Log.AddRange(part.Select(RowOf));
            await context.SaveChangesAsync(cancellation);
            context.ChangeTracker.Clear();
        }

        await transaction.CommitAsync(cancellation);
    }

    /// <inheritdoc/>
    public async Task<LogPage> PageAsync(LogWish wish, CancellationToken cancellation)
    {
        int rows = Math.Clamp(wish.Rows, 1, LogWish.MostRows);
        await using ShopContext context = new(options);
        IQueryable<LogRow> all = Within(context.Log.AsNoTracking(), wish.Span ?? new());
        if (wish.RunId is { } run)
            all = all.Where(r => r.RunId == run);
        if (wish.Kind is { } kind)
            all = OfKind(all, kind);
        int count = await all.CountAsync(cancellation);
        IQueryable<LogRow> rest = all;
        if (wish.After is { } after)
            rest = all.Where(r => r.AtSeconds <= after.AtSeconds && (r.AtSeconds < after.AtSeconds || r.Number < after.Number));
        List<LogRow> page = await rest.OrderByDescending(r => r.AtSeconds).ThenByDescending(r => r.Number).Take(rows + 1).ToListAsync(cancellation);
        LogRow? last = page.Count > rows ? page[rows - 1] : null;
        return new([.. page.Take(rows).Select(EntryOf)], count, last is null ? null : new(last.AtSeconds, last.Number));
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<LogEntry>> OfRunAsync(string runId, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<LogRow> rows = await context.Log.AsNoTracking().Where(r => r.RunId == runId).OrderBy(r => r.Number).ToListAsync(cancellation);
        return [.. rows.Select(EntryOf)];
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<LogEntry>> LastAsync(LogKind kind, LogSpan span, int most, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        return [.. (await LastRowsAsync(OfKind(Within(context.Log.AsNoTracking(), span), kind), most, cancellation)).Select(EntryOf)];
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RunActual>> ActualsAsync(LogSpan span, int most, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        List<LogRow> rows = await LastRowsAsync(Within(context.Log.AsNoTracking(), span).Where(r => r.Kind == Done), most, cancellation);
        return [.. rows.Select(r => EntryOf(r).Actual).OfType<RunActual>()];
    }

    private static async Task<List<LogRow>> LastRowsAsync(IQueryable<LogRow> rows, int most, CancellationToken cancellation)
    {
        List<LogRow> last = await rows.Where(r => !r.Struck).OrderByDescending(r => r.AtSeconds).ThenByDescending(r => r.Number).Take(most).ToListAsync(cancellation);
        last.Reverse();
        return last;
    }

    private static async Task<LogBefore> BeforeAsync(ShopContext context, LogEntry entry, LogRow? struck, CancellationToken cancellation)
    {
        string? runId = entry.RunId ?? struck?.RunId;
        List<LogRow> ofRun = runId is null ? [] : await context.Log.AsNoTracking().Where(r => r.RunId == runId && !r.Struck).OrderBy(r => r.Number).ToListAsync(cancellation);
        List<LogEntry> entries = [.. ofRun.Select(EntryOf)];
        IReadOnlyList<RunTurn> others = LogBefore.From(entry, entries) is { } from ? await OthersAsync(context, entry, from, cancellation) : [];
        return new(entries, others, struck is null ? null : EntryOf(struck));
    }

    // Runs that stopped on the press after an instant, the first ones, and runs that stand started there.
    private static async Task<IReadOnlyList<RunTurn>> OthersAsync(ShopContext context, LogEntry entry, DateTimeOffset from, CancellationToken cancellation)
    {
        long fromSeconds = from.ToUnixTimeSeconds();
        IQueryable<LogRow> onPress = context.Log.AsNoTracking().Where(r => r.PressId == entry.PressId && r.RunId != null && r.RunId != entry.RunId && !r.Struck);
        List<string> runs = await onPress.Where(r => r.AtSeconds >= fromSeconds && (r.Kind == "Stop" || r.Kind == Done)).OrderBy(r => r.AtSeconds).Take(MostOthers).Select(r => r.RunId!).ToListAsync(cancellation);
        runs.AddRange(await onPress.Where(r => r.Kind == "Start" && !context.Log.Any(s => s.RunId == r.RunId && !s.Struck && s.Number > r.Number && (s.Kind == "Stop" || s.Kind == Done)))
            .Select(r => r.RunId!).ToListAsync(cancellation));
        return [.. (await TurnsAsync(context, [.. runs.Distinct(StringComparer.Ordinal)], cancellation))
            .Where(t => string.Equals(t.PressId, entry.PressId, StringComparison.Ordinal) && (t.Stop is null || t.Stop > from)).OrderBy(t => t.Start)];
    }

    /// <inheritdoc/>
    public async Task<IReadOnlyList<RunTurn>> TurnsAsync(IReadOnlyList<string> runIds, CancellationToken cancellation)
    {
        await using ShopContext context = new(options);
        return await TurnsAsync(context, runIds, cancellation);
    }

    private static async Task<IReadOnlyList<RunTurn>> TurnsAsync(ShopContext context, IReadOnlyList<string> runIds, CancellationToken cancellation)
    {
        List<LogEntry> entries = [];
        foreach (string[] some in runIds.Chunk(500))
        {
            List<LogRow> rows = await context.Log.AsNoTracking().Where(r => some.Contains(r.RunId) && !r.Struck && (r.Kind == "Start" || r.Kind == "Stop" || r.Kind == Done))
                .OrderBy(r => r.Number).ToListAsync(cancellation);
            entries.AddRange(rows.Select(EntryOf));
        }

        return RunTurns.Of(entries);
    }

    private static IQueryable<LogRow> Within(IQueryable<LogRow> rows, LogSpan span)
    {
        if (span.PressId is { } press)
            rows = rows.Where(r => r.PressId == press);
        if (span.From?.ToUnixTimeSeconds() is { } from)
            rows = rows.Where(r => r.AtSeconds >= from);
        if (span.To?.ToUnixTimeSeconds() is { } to)
            rows = rows.Where(r => r.AtSeconds < to);
        return rows;
    }

    private static IQueryable<LogRow> OfKind(IQueryable<LogRow> rows, LogKind kind)
    {
        string name = kind.ToString();
        return kind == LogKind.Stop ? rows.Where(r => r.Kind == "Stop" || r.Kind == Done) : rows.Where(r => r.Kind == name);
    }

    private static LogRow RowOf(LogEntry entry) => new()
    {
        AtSeconds = entry.At.ToUnixTimeSeconds(),
        Kind = entry.Actual is null ? entry.Kind.ToString() : Done,
        RunId = entry.RunId,
        PressId = entry.PressId,
        Json = JsonSerializer.Serialize(entry with { Number = 0, Struck = false }, ShopJson.Compact),
    };

    private static LogEntry EntryOf(LogRow row) =>
        (JsonSerializer.Deserialize<LogEntry>(row.Json, ShopJson.Compact) ?? throw new InvalidDataException("The log: found null; wanted an entry."))
            with
        { Number = row.Number, Struck = row.Struck };
}
