using Laydown.Measures;

namespace Laydown.Shop.Orders;

/// <summary>Joins an order's folder and the name an order gives for its artwork, and lets nothing out of that folder.</summary>
internal static class ArtworkPlace
{
    /// <summary>Full path of a plain file in the folder, or the fault: a path instead of a name, a link, or no such file.</summary>
    public static Reading<string> Find(string orderFolder, string name, int index, string artwork = "artwork")
    {
        string field = Invariant($"/items/{index}/{artwork}");
        if (name.Length is 0 or > 200 || name is "." or ".." || name.AsSpan().ContainsAny('/', '\\', '\0') || Path.IsPathRooted(name))
            return Refused(field, Invariant($"'{Shown(name)}'"), "the plain name of a file in the order's folder");

        FileInfo file = new(Path.Combine(orderFolder, name));
        if (file.LinkTarget is not null)
            return Refused(field, Invariant($"'{name}', which is a link"), "the file itself");
        return file.Exists
            ? Reading.Of(file.FullName)
            : Refused(field, Invariant($"no file '{name}'"), "a file of that name in the order's folder");
    }

    private static string Shown(string name) => new([.. name.Take(60).Select(c => char.IsControl(c) ? '?' : c)]);

    private static Reading<string> Refused(string field, string found, string wanted) =>
        Reading.Refused<string>(new InputFault(ItemRules.OrderFile, null, field, found, wanted));
}
