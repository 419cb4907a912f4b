namespace Laydown.Shop.Layers;

/// <summary>Names of folders of looks: made here alone, so that nothing from outside becomes a path.</summary>
internal static class LookFolders
{
    /// <summary>Name of the record in a look's folder.</summary>
    public const string RecordFile = "look.json";

    /// <summary>Ending of a folder in the making.</summary>
    public const string PartEnding = ".part";

    /// <summary>Ending of the file that the maker of a folder keeps open.</summary>
    public const string LockEnding = ".lock";

    /// <summary>Whether a text is a plain name of a folder: no path, no dot in front, none of the endings above.</summary>
    public static bool IsPlain(string name) =>
        name.Length is > 0 and <= 200 && name[0] != '.' && string.Equals(Path.GetFileName(name), name, StringComparison.Ordinal)
        && !name.AsSpan().ContainsAny('\\', '\0');

    /// <summary>The number of a look's id, or null where the text is none.</summary>
    public static int? NumberOf(string lookId) =>
        lookId.StartsWith("L-", StringComparison.Ordinal) && lookId.Length is > 2 and < 12 && lookId[2] != '0' && lookId.AsSpan(2).IndexOfAnyExceptInRange('0', '9') < 0
            && int.TryParse(lookId.AsSpan(2), out int number)
            ? number
            : null;

    /// <summary>Removes what makers that are gone left in a folder: whoever can take the lock knows that its maker is gone.</summary>
    public static void Sweep(string folder)
    {
        if (!Directory.Exists(folder))
            return;
        foreach (string path in Directory.GetFiles(folder, ".*" + LockEnding))
        {
            if (TryTake(path) is not { } taken)
                continue;
            using (taken)
            {
                string part = path[..^LockEnding.Length];
                if (Directory.Exists(part))
                    Directory.Delete(part, recursive: true);
            }

            File.Delete(path);
        }
    }

    private static FileStream? TryTake(string path)
    {
        try
        {
            return new(path, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
