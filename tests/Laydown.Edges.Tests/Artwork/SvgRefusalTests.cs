using System.Text;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Drawings that reach out of their file, run programs or never end.</summary>
public sealed class SvgRefusalTests : IDisposable
{
    private readonly WorkFolder work = new();

    public static TheoryData<string, string> Bad()
    {
        string deep = string.Concat(Enumerable.Repeat("<g>", 5000)) + string.Concat(Enumerable.Repeat("</g>", 5000));
        string doubling = "<g id='a0'><rect width='1' height='1'/></g>" + string.Concat(Enumerable.Range(1, 40).Select(i => Invariant($"<g id='a{i}'><use href='#a{i - 1}'/><use href='#a{i - 1}'/></g>")));
        return new()
        {
            { Svg("<image href='/etc/hostname' width='5' height='5'/>"), "image href" },
            { Svg("<image href='file:///etc/hostname' width='5' height='5'/>"), "image href" },
            { Svg("<image xmlns:xlink='http://www.w3.org/1999/xlink' xlink:href='http://tidewrack.example/x.png' width='5' height='5'/>"), "image href" },
            { Svg("<image href='data:image/svg+xml;base64,PHN2Zy8+' width='5' height='5'/>"), "image href" },
            { Svg("<image href='data:image/png;base64,iVBORw0KGgo=' width='5' height='5'/>"), "embedded picture" },
            { Svg("<use href='other.svg#bird'/>"), "use href" },
            { Svg("<style>@import url('http://tidewrack.example/a.css');</style>"), "style" },
            { Svg("<rect width='5' height='5' style='fill:url(http://tidewrack.example/p.svg#x)'/>"), "style" },
            { "<!DOCTYPE svg [<!ENTITY x SYSTEM 'file:///etc/hostname'>]>" + Svg("<text>&x;</text>"), "XML" },
            { "<!DOCTYPE svg [<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'>]>" + Svg("<text>&b;</text>"), "XML" },
            { Svg(deep), "XML" },
            { Svg(doubling), "elements" },
            { Svg("<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g>"), "elements" },
            { Svg("<rect"), "XML" },
            { "<svg xmlns='http://www.w3.org/2000/svg'><rect width='5' height='5'/></svg>", "width, height, viewBox" },
            { "<svg xmlns='http://www.w3.org/2000/svg' width='900000mm' height='1mm'/>", "width, height" },
            { "<html><svg/></html>", "root element" },
        };
    }

    [Theory, MemberData(nameof(Bad))]
    public async Task A_drawing_that_cannot_be_trusted_is_refused(string text, string field)
    {
        var read = await work.Reader.ReadAsync(work.Write("bad.svg", Encoding.UTF8.GetBytes(text)), CancellationToken.None);
        Assert.Contains(field, Assert.Single(read.Faults).Field, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Programs_in_a_drawing_are_left_out_and_links_are_not_followed()
    {
        string text = Svg("<script>throw 1</script><a href='http://tidewrack.example/'><rect width='5' height='5' onclick='x()'/></a>");
        var read = await work.Reader.ReadAsync(work.Write("links.svg", Encoding.UTF8.GetBytes(text)), CancellationToken.None);
        Assert.True(read.IsTaken, string.Join("\n", read.Faults));
    }

    public void Dispose() => work.Dispose();

    private static string Svg(string body) => "<svg xmlns='http://www.w3.org/2000/svg' width='50mm' height='50mm' viewBox='0 0 50 50'>" + body + "</svg>";
}
