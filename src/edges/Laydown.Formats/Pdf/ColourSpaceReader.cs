using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Reads colour spaces, from names in resources down to the space a tint or an index stands on.</summary>
/// <param name="objects">The open file.</param>
internal sealed class ColourSpaceReader(PdfObjects objects)
{
    private const int Deepest = 6;

    /// <summary>The space a token names or holds; a name is looked up in the resources first.</summary>
    public ColourSpace Read(IToken? token, DictionaryToken? resources) => Read(token, resources, 0);

    private ColourSpace Read(IToken? token, DictionaryToken? resources, int depth)
    {
        if (depth > Deepest)
            return new("unknown", []);

        return objects.Resolve(token) switch
        {
            NameToken name => Named(name.Data, resources, depth),
            ArrayToken { Data.Count: > 0 } array when objects.Resolve(array.Data[0]) is NameToken family => Family(family.Data, array, resources, depth),
            _ => new("unknown", []),
        };
    }

    private ColourSpace Named(string name, DictionaryToken? resources, int depth)
    {
        if (objects.Dictionary(resources, "ColorSpace") is { } spaces && spaces.Data.TryGetValue(name, out var given)
            && !(objects.Resolve(given) is NameToken same && same.Data == name))
            return Read(given, resources, depth + 1);

        return name switch
        {
            "G" => ColourSpace.Grey,
            "RGB" => new("DeviceRGB", []),
            "CMYK" => new("DeviceCMYK", []),
            "I" => new("Indexed", []),
            _ => new(name, []),
        };
    }

    private ColourSpace Family(string family, ArrayToken array, DictionaryToken? resources, int depth)
    {
        IToken? second = array.Data.Count > 1 ? array.Data[1] : null;
        return family switch
        {
            "ICCBased" => new(Invariant($"ICCBased({Components(second)})"), []),
            "Separation" => new("Separation", Spots([second])),
            "DeviceN" => new("DeviceN", Spots(objects.Resolve(second) is ArrayToken names ? names.Data : [])),
            "Indexed" or "I" => Read(second, resources, depth + 1),
            "Pattern" when second is not null => Read(second, resources, depth + 1),
            _ => new(family, []),
        };
    }

    private int Components(IToken? profile) => (int)(objects.Number(objects.AsDictionary(profile), "N") ?? 0);

    private string[] Spots(IReadOnlyList<IToken?> names) =>
        [.. names.Select(objects.Resolve).OfType<NameToken>().Select(n => n.Data).Where(n => !SeparationRoles.IsProcess(n))];
}
