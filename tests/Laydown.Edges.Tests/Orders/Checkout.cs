namespace Laydown.Edges.Tests.Orders;

/// <summary>Where the project lies.</summary>
internal static class Checkout
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Laydown.slnx")))
            folder = Path.GetDirectoryName(folder);
        return folder ?? throw new InvalidOperationException("Laydown.slnx was not found above the tests.");
    }
}
