using System.IO.Compression;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Looks things up in a PDF, following references; what is missing or of another type is null, never an exception.</summary>
/// <param name="structure">The open file.</param>
/// <param name="mostBytes">Longest stream once it is unpacked, bytes.</param>
internal sealed class PdfObjects(Structure structure, long mostBytes)
{
    private const int MostReferences = 32;

    /// <summary>The object behind any number of references.</summary>
    public IToken? Resolve(IToken? token)
    {
        for (int step = 0; step < MostReferences && token is IndirectReferenceToken reference; step++)
            token = structure.TokenScanner.Get(reference.Data)?.Data;
        return token is IndirectReferenceToken or NullToken ? null : token;
    }

    /// <summary>An entry of a dictionary, of the wanted type.</summary>
    public T? Get<T>(DictionaryToken? from, string key)
        where T : class, IToken => from is not null && from.Data.TryGetValue(key, out var raw) ? Resolve(raw) as T : null;

    /// <summary>An entry as a dictionary; the dictionary of a stream counts.</summary>
    public DictionaryToken? Dictionary(DictionaryToken? from, string key) =>
        from is not null && from.Data.TryGetValue(key, out var raw) ? AsDictionary(raw) : null;

    /// <summary>A token as a dictionary; the dictionary of a stream counts.</summary>
    public DictionaryToken? AsDictionary(IToken? token) => Resolve(token) switch
    {
        DictionaryToken dictionary => dictionary,
        StreamToken stream => stream.StreamDictionary,
        _ => null,
    };

    /// <summary>A number, or null.</summary>
    public double? Number(DictionaryToken? from, string key) => Get<NumericToken>(from, key) is { } number && double.IsFinite(number.Double) ? number.Double : null;

    /// <summary>A name or string, or null.</summary>
    public string? Text(DictionaryToken? from, string key) => from is null || !from.Data.TryGetValue(key, out var raw) ? null : Resolve(raw) switch
    {
        NameToken name => name.Data,
        StringToken text => text.Data,
        HexToken hex => hex.Data,
        _ => null,
    };

    /// <summary>Whether an entry is the boolean true.</summary>
    public bool IsTrue(DictionaryToken? from, string key) => Get<BooleanToken>(from, key)?.Data ?? false;

    /// <summary>Numbers of an array; null where it is not one of <paramref name="count"/> finite numbers.</summary>
    public double[]? Numbers(IToken? token, int count)
    {
        if (Resolve(token) is not ArrayToken array || array.Data.Count != count)
            return null;

        double[] values = [.. array.Data.Select(v => Resolve(v) is NumericToken number ? number.Double : double.NaN)];
        return values.All(double.IsFinite) ? values : null;
    }

    /// <summary>An entry of a page that may stand on a parent node instead.</summary>
    public IToken? Inherited(DictionaryToken page, string key)
    {
        DictionaryToken? node = page;
        for (int level = 0; level < MostReferences && node is not null; level++)
        {
            if (node.Data.TryGetValue(key, out var raw) && Resolve(raw) is { } found)
                return found;
            node = Dictionary(node, "Parent");
        }

        return null;
    }

    /// <summary>The bytes of a stream, its filters undone.</summary>
    /// <exception cref="TooMuchWorkException">It unpacks to more than allowed.</exception>
    public ReadOnlyMemory<byte> Decode(StreamToken stream)
    {
        if (IsDeflated(stream) && !UnpacksWithin(stream.Data))
            throw new TooMuchWorkException(Invariant($"a stream of more than {mostBytes >> 20} MiB, packed in {stream.Data.Length} bytes"));
        return stream.Decode(structure.FilterProvider, structure.TokenScanner);
    }

    /// <summary>Entries of a named sub-dictionary of resources.</summary>
    public IEnumerable<KeyValuePair<string, IToken>> Entries(DictionaryToken? resources, string category) =>
        Dictionary(resources, category)?.Data ?? Enumerable.Empty<KeyValuePair<string, IToken>>();

    private bool IsDeflated(StreamToken stream) => stream.StreamDictionary.Data.TryGetValue("Filter", out var raw) && Resolve(raw) switch
    {
        NameToken one => one,
        ArrayToken { Data.Count: > 0 } several => Resolve(several.Data[0]) as NameToken,
        _ => null,
    } is { Data: "FlateDecode" or "Fl" };

    /// <summary>Unpacks once without keeping anything: the parser itself has no limit.</summary>
    private bool UnpacksWithin(ReadOnlyMemory<byte> packed)
    {
        // No more than so much comes out of a byte of deflate.
        const int MostRatio = 1032;
        if (packed.Length * (long)MostRatio <= mostBytes)
            return true;
        try
        {
            using var deflate = new ZLibStream(new MemoryStream(packed.ToArray()), CompressionMode.Decompress);
            byte[] block = new byte[1 << 16];
            long all = 0;
            int read;
            while (all <= mostBytes && (read = deflate.Read(block)) > 0)
                all += read;
            return all <= mostBytes;
        }
        catch (InvalidDataException)
        {
            // Damage is told by the parser, in its own words.
            return true;
        }
    }
}
