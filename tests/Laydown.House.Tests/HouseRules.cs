using System.Reflection;
using System.Runtime.CompilerServices;

namespace Laydown.House.Tests;

/// <summary>The rules of the house as functions that list breaches, so that each can be tried on a canary.</summary>
internal static class HouseRules
{
    /// <summary>Differences between two tables of walls, in words.</summary>
    public static IReadOnlyList<string> Differences(
        IReadOnlyDictionary<string, IReadOnlySet<string>> drawn, IReadOnlyDictionary<string, IReadOnlySet<string>> built) =>
    [
        .. built.Keys.Except(drawn.Keys).Select(w => $"{w} is built but not drawn"),
        .. drawn.Keys.Except(built.Keys).Select(w => $"{w} is drawn but not built"),
        .. built.Where(b => drawn.ContainsKey(b.Key)).SelectMany(b => b.Value.Except(drawn[b.Key]).Select(r => $"{b.Key} knows {r}, which is not drawn")),
        .. built.Where(b => drawn.ContainsKey(b.Key)).SelectMany(b => drawn[b.Key].Except(b.Value).Select(r => $"{b.Key} is drawn to know {r}, but does not")),
    ];

    /// <summary>Circles between rooms below one wall's namespace, from arrows between types given by full name.</summary>
    public static IReadOnlyList<string> RoomCircles(IEnumerable<(string From, string To)> arrows, string wall)
    {
        var rooms = arrows.Select(a => (From: Room(a.From, wall), To: Room(a.To, wall)))
            .Where(a => a.From is not null && a.To is not null && a.From != a.To)
            .Distinct().ToLookup(a => a.From!, a => a.To!);
        return rooms.Select(r => r.Key).Where(start => Reaches(rooms, start, start)).Select(r => $"{wall}.{r} is part of a circle of rooms").ToList();
    }

    /// <summary>Arrows from types below one namespace to types below any of the others, wiring apart.</summary>
    public static IReadOnlyList<string> Forbidden(
        IEnumerable<(string From, string To)> arrows, string from, string wiring, params string[] to) =>
        arrows.Where(a => Below(a.From, from) && !a.From.StartsWith(wiring, StringComparison.Ordinal) && to.Any(t => Below(a.To, t)))
            .Select(a => $"{a.From} knows {a.To}").Distinct().ToList();

    /// <summary>Public classes that are neither sealed, static nor abstract; generated components and migrations apart.</summary>
    public static IReadOnlyList<string> OpenClasses(IEnumerable<Type> types) =>
        types.Where(t => t.IsClass && t.IsVisible && !t.IsSealed && !t.IsAbstract && !IsGeneratedKind(t)).Select(t => t.FullName!).ToList();

    /// <summary>Static fields that can be reassigned; those the compiler makes apart.</summary>
    public static IReadOnlyList<string> ReassignableStatics(IEnumerable<Type> types) =>
        types.Where(t => !IsCompilerMade(t))
            .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly))
            .Where(f => !f.IsInitOnly && !f.IsLiteral && !IsCompilerMade(f))
            .Select(f => $"{f.DeclaringType!.FullName}.{f.Name}").ToList();

    private static bool IsGeneratedKind(Type type)
    {
        for (Type? t = type.BaseType; t is not null; t = t.BaseType)
        {
            if (t.FullName is "Microsoft.AspNetCore.Components.ComponentBase" or "Microsoft.EntityFrameworkCore.Migrations.Migration")
                return true;
        }

        return type.Name is "Program" or "_Imports" || type.FullName!.StartsWith("Microsoft.", StringComparison.Ordinal);
    }

    private static bool IsCompilerMade(Type type) =>
        type.FullName!.Contains('<', StringComparison.Ordinal)
        || type.GetCustomAttribute<CompilerGeneratedAttribute>() is not null
        || !type.FullName.StartsWith("Laydown.", StringComparison.Ordinal);

    private static bool IsCompilerMade(FieldInfo field) =>
        field.Name.Contains('<', StringComparison.Ordinal) && !field.Name.EndsWith(">k__BackingField", StringComparison.Ordinal);

    private static bool Below(string type, string nameSpace) => type.StartsWith(nameSpace + ".", StringComparison.Ordinal);

    private static string? Room(string type, string wall) =>
        Below(type, wall) && type[(wall.Length + 1)..].Split('.') is { Length: > 1 } parts ? parts[0] : null;

    private static bool Reaches(ILookup<string, string> rooms, string from, string goal)
    {
        var seen = new HashSet<string>();
        var open = new Stack<string>(rooms[from]);
        while (open.TryPop(out string? room))
        {
            if (room == goal)
                return true;
            if (seen.Add(room))
                foreach (string next in rooms[room])
                    open.Push(next);
        }

        return false;
    }
}
