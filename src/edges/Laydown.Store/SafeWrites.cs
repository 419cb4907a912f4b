using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Laydown.Store;

/// <summary>Sets each connection so that what was saved is on the disk when the call returns.</summary>
/// <remarks>
/// The data base is in WAL mode, which lets readers go on while one writes; there <c>synchronous=FULL</c> is what makes a commit durable at once (from memory; tried by killing a writer).
/// </remarks>
internal sealed class SafeWrites : DbConnectionInterceptor
{
    private const string Pragmas = "PRAGMA synchronous=FULL; PRAGMA foreign_keys=ON;";

    public override void ConnectionOpened(DbConnection connection, ConnectionEndEventData eventData)
    {
        using DbCommand command = connection.CreateCommand();
        command.CommandText = Pragmas;
        command.ExecuteNonQuery();
    }

    public override async Task ConnectionOpenedAsync(
        DbConnection connection, ConnectionEndEventData eventData, CancellationToken cancellationToken = default)
    {
        await using DbCommand command = connection.CreateCommand();
        command.CommandText = Pragmas;
        await command.ExecuteNonQueryAsync(cancellationToken);
    }
}
