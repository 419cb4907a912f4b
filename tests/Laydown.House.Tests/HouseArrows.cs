using System.Reflection;
using ArchUnitNET.Loader;

namespace Laydown.House.Tests;

/// <summary>Arrows between types as ArchUnitNET reads them from the built assemblies.</summary>
internal static class HouseArrows
{
    public static IReadOnlyList<(string From, string To)> Of(params IReadOnlyList<Assembly> assemblies) =>
        new ArchLoader().LoadAssemblies([.. assemblies]).Build().Types
            .SelectMany(type => type.Dependencies.Select(d => (From: Outermost(type.FullName), To: Outermost(d.Target.FullName))))
            .Where(a => a.To.StartsWith("Laydown.", StringComparison.Ordinal))
            .Distinct().ToList();

    // Nested and generic types count as the type they stand in.
    private static string Outermost(string fullName) => fullName.Split('+', '`', '<')[0];
}
