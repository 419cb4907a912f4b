using Laydown.Store;
using Microsoft.EntityFrameworkCore;

namespace Laydown.Edges.Tests.Store;

public sealed class ShopContextLawTests
{
    [Fact]
    public void The_migrations_make_the_tables_that_the_records_ask_for()
    {
        using ShopContext context = new ShopContextForDesign().CreateDbContext([]);
        Assert.False(context.Database.HasPendingModelChanges());
    }
}
