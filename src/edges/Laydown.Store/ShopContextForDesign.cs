using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Laydown.Store;

/// <summary>Lets <c>dotnet ef migrations add</c> see the tables without a shop.</summary>
internal sealed class ShopContextForDesign : IDesignTimeDbContextFactory<ShopContext>
{
    public ShopContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<ShopContext>().UseSqlite("Data Source=:memory:").Options);
}
