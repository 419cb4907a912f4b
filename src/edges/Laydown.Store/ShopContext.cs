using Laydown.Store.Rows;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Store;

/// <summary>The tables of a shop.</summary>
internal sealed class ShopContext(DbContextOptions<ShopContext> options) : DbContext(options)
{
    public DbSet<OrderRow> Orders => Set<OrderRow>();

    public DbSet<ItemRow> Items => Set<ItemRow>();

    public DbSet<RunRow> Runs => Set<RunRow>();

    public DbSet<RefusedOrderRow> RefusedOrders => Set<RefusedOrderRow>();

    public DbSet<ProofLinkRow> ProofLinks => Set<ProofLinkRow>();

    public DbSet<ProofAnswerRow> ProofAnswers => Set<ProofAnswerRow>();

    public DbSet<StockLotRow> StockLots => Set<StockLotRow>();

    public DbSet<StockMoveRow> StockMoves => Set<StockMoveRow>();

    public DbSet<StockPointRow> StockPoints => Set<StockPointRow>();

    public DbSet<PressCareRow> PressCare => Set<PressCareRow>();

    public DbSet<LogRow> Log => Set<LogRow>();

    /// <summary>Each write raises the version of the rows it changes.</summary>
    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        foreach (var entry in ChangeTracker.Entries<IVersioned>().Where(e => e.State is EntityState.Added or EntityState.Modified))
            entry.Entity.Version++;
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<OrderRow>(row =>
        {
            row.ToTable("Orders").HasKey(r => r.Id);
            row.Property(r => r.Version).IsConcurrencyToken();
        });
        modelBuilder.Entity<ItemRow>(row =>
        {
            row.ToTable("Items").HasKey(r => r.Id);
            row.Property(r => r.Version).IsConcurrencyToken();
            row.HasOne<OrderRow>().WithMany().HasForeignKey(r => r.OrderId);
            row.HasIndex(r => r.RunId);
            row.HasIndex(r => r.State);
        });
        modelBuilder.Entity<RunRow>(row =>
        {
            row.ToTable("Runs").HasKey(r => r.Id);
            row.Property(r => r.Version).IsConcurrencyToken();
            row.HasIndex(r => r.State);
        });
        modelBuilder.Entity<RefusedOrderRow>(row =>
        {
            row.ToTable("RefusedOrders").HasKey(r => r.FileName);
            row.Property(r => r.Version).IsConcurrencyToken();
        });
        modelBuilder.Entity<ProofLinkRow>(row =>
        {
            row.ToTable("ProofLinks").HasKey(r => r.Id);
            row.Property(r => r.Version).IsConcurrencyToken();
            row.HasIndex(r => r.ItemId);
        });
        modelBuilder.Entity<ProofAnswerRow>(row =>
        {
            row.ToTable("ProofAnswers").HasKey(r => r.Number);
            row.Property(r => r.Number).ValueGeneratedOnAdd();
            row.Property(r => r.Id).IsRequired();
            row.Property(r => r.Version).IsConcurrencyToken();
            row.HasIndex(r => r.Id).IsUnique();
            row.HasIndex(r => r.ItemId);
            row.HasIndex(r => new { r.LinkId, r.AtSeconds });
            row.HasOne<ProofLinkRow>().WithMany().HasForeignKey(r => r.LinkId);
        });
        StockRoom(modelBuilder);
        LogOf(modelBuilder);
    }

    private static void StockRoom(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<StockLotRow>(row =>
        {
            row.ToTable("StockLots").HasKey(r => r.Id);
            row.Property(r => r.Version).IsConcurrencyToken();
            row.HasIndex(r => r.StockId);
        });
        modelBuilder.Entity<StockMoveRow>(row =>
        {
            row.ToTable("StockMoves").HasKey(r => r.Number);
            row.Property(r => r.Number).ValueGeneratedOnAdd();
            row.Property(r => r.Version).IsConcurrencyToken();
            row.HasIndex(r => r.LotId);
            row.HasIndex(r => r.RunId);
        });
        modelBuilder.Entity<StockPointRow>(row =>
        {
            row.ToTable("StockPoints").HasKey(r => r.StockId);
            row.Property(r => r.Version).IsConcurrencyToken();
        });
        modelBuilder.Entity<PressCareRow>(row =>
        {
            row.ToTable("PressCare").HasKey(r => r.PressId);
            row.Property(r => r.Version).IsConcurrencyToken();
        });
    }

    private static void LogOf(ModelBuilder modelBuilder) => modelBuilder.Entity<LogRow>(row =>
    {
        row.ToTable("Log").HasKey(r => r.Number);
        row.Property(r => r.Number).ValueGeneratedOnAdd();
        row.HasIndex(r => r.AtSeconds);
        row.HasIndex(r => new { r.Kind, r.AtSeconds });
        row.HasIndex(r => new { r.PressId, r.AtSeconds });
        row.HasIndex(r => new { r.RunId, r.Number });
    });
}
