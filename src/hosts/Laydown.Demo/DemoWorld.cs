using Laydown.Demo.Descriptions;
using Laydown.Demo.Orders;
using Laydown.Demo.Profiles;
using Laydown.Formats.Json;

namespace Laydown.Demo;

/// <summary>Makes the demo world: the catalogue of Tidewrack Signs and seven orders of the Saltmarsh Observatory and its friends, all invented.</summary>
public static class DemoWorld
{
    /// <summary>The demo day. Orders came in the week before it and are due in the days after.</summary>
    public static DateOnly Day { get; } = new(2026, 12, 1);

    /// <summary>The instant written into files that carry one.</summary>
    internal static DateTimeOffset Made { get; } = new(2026, 11, 24, 9, 0, 0, TimeSpan.Zero);

    /// <summary>Writes <c>catalogue/</c> and <c>orders/</c> below a shop's folder, for <see cref="Day"/>.</summary>
    /// <exception cref="OperationCanceledException">Cancelled; files that stand are whole.</exception>
    public static void Write(string shopFolder, CancellationToken cancellation) => Write(shopFolder, Day, cancellation);

    /// <summary>As above, with days counted from <paramref name="day"/>.</summary>
    /// <remarks>The same day gives the same bytes every time. Each file is written beside and renamed; what stands there is replaced.</remarks>
    /// <exception cref="OperationCanceledException">Cancelled; files that stand are whole.</exception>
    public static void Write(string shopFolder, DateOnly day, CancellationToken cancellation)
    {
        // Profiles take by far the longest; those that stand are the same bytes and are kept.
        string profiles = Path.Combine(shopFolder, "catalogue", "profiles");
        ParallelOptions options = new() { CancellationToken = cancellation };
        DemoCatalogue.Write(Path.Combine(shopFolder, "catalogue"), cancellation);
        Parallel.Invoke(
            options,
            () => Orders(shopFolder, day, cancellation),
            () => DemoCharacterisation.Write(shopFolder, cancellation),
            () => DemoOptics.Write(shopFolder, cancellation),
            () =>
            {
                if (!DemoCatalogue.Profiles.All(name => File.Exists(Path.Combine(profiles, name))))
                    DemoProfiles.Write(profiles, cancellation);
            });
    }

    /// <summary>Catalogue and orders alone.</summary>
    internal static void WithoutProfiles(string shopFolder, DateOnly day, CancellationToken cancellation)
    {
        DemoCatalogue.Write(Path.Combine(shopFolder, "catalogue"), cancellation);
        Orders(shopFolder, day, cancellation);
    }

    private static void Orders(string shopFolder, DateOnly day, CancellationToken cancellation)
    {
        Parallel.ForEach(DemoOrders.All(day), new ParallelOptions { CancellationToken = cancellation }, drawn =>
        {
            // The order's own file comes last: an order stands when all its artwork does.
            string folder = Path.Combine(shopFolder, "orders", drawn.Order.Id);
            Directory.CreateDirectory(folder);
            drawn.Draw(folder);
            DemoFiles.Write(Path.Combine(folder, "order.json"), stream => LaydownJson.Write(stream, drawn.Order));
        });
    }
}
