using System.Text;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Writes small PDF files object by object, so that a test holds the whole truth about its file.</summary>
internal static class HandPdf
{
    /// <summary>A PDF of numbered objects; object 1 is the catalog.</summary>
    public static byte[] Of(params string[] objects)
    {
        var text = new StringBuilder("%PDF-1.6\n%\u00e2\u00e3\u00cf\u00d3\n");
        var places = new List<int>();
        for (int number = 1; number <= objects.Length; number++)
        {
            places.Add(text.Length);
            text.Append(Invariant($"{number} 0 obj\n{objects[number - 1]}\nendobj\n"));
        }

        int table = text.Length;
        text.Append(Invariant($"xref\n0 {objects.Length + 1}\n0000000000 65535 f \n"));
        places.ForEach(p => text.Append(Invariant($"{p:0000000000} 00000 n \n")));
        text.Append(Invariant($"trailer\n<</Size {objects.Length + 1}/Root 1 0 R>>\nstartxref\n{table}\n%%EOF\n"));
        return Encoding.Latin1.GetBytes(text.ToString());
    }

    /// <summary>A stream object.</summary>
    public static string Stream(string content, string entries = "") => Invariant($"<<{entries}/Length {content.Length}>>\nstream\n{content}\nendstream");

    /// <summary>A colour space of one named separation with a CMYK alternate.</summary>
    public static string Separation(string name, string alternate) =>
        Invariant($"[/Separation /{name} /DeviceCMYK <</FunctionType 2/Domain[0 1]/C0[0 0 0 0]/C1[{alternate}]/N 1>>]");

    /// <summary>One page with the given page entries, resources, content and more objects from number 5.</summary>
    public static byte[] Page(string entries, string resources, string content, string catalog = "", params string[] more) => Of(
    [
        Invariant($"<</Type/Catalog/Pages 2 0 R{catalog}>>"),
        "<</Type/Pages/Kids[3 0 R]/Count 1>>",
        Invariant($"<</Type/Page/Parent 2 0 R{entries}/Contents 4 0 R/Resources<<{resources}>>>>"),
        Stream(content),
        .. more,
    ]);

    /// <summary>Some pages without content.</summary>
    public static byte[] Pages(int count) => Of(
    [
        "<</Type/Catalog/Pages 2 0 R>>",
        Invariant($"<</Type/Pages/Kids[{string.Join(' ', Enumerable.Range(3, count).Select(n => Invariant($"{n} 0 R")))}]/Count {count}>>"),
        .. Enumerable.Repeat("<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Resources<<>>>>", count),
    ]);
}
