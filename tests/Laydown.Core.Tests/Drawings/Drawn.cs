using System.Globalization;
using System.Xml.Linq;

namespace Laydown.Core.Tests.Drawings;

/// <summary>A drawing read back with an XML reader.</summary>
internal sealed class Drawn
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public Drawn(string svg)
    {
        Root = XDocument.Parse(svg).Root!;
        double[] box = [.. Root.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
        (Width, Height) = (box[2], box[3]);
    }

    public XElement Root { get; }

    public double Width { get; }

    public double Height { get; }

    public IReadOnlyList<(double X, double Y, double W, double H)> Rects => [.. Root.Elements(Svg + "rect").Select(r => (Of(r, "x"), Of(r, "y"), Of(r, "width"), Of(r, "height")))];

    public IReadOnlyList<(double X, double Y, string Text)> Texts => [.. Root.Elements(Svg + "text").Select(t => (Of(t, "x"), Of(t, "y"), t.Value))];

    /// <summary>What every drawing must be: named and described for those who cannot see it, with nothing outside its frame.</summary>
    public void IsSound()
    {
        Assert.Equal("img", Root.Attribute("role")!.Value);
        Assert.Equal(["title", "desc"], Root.Elements().Take(2).Select(e => e.Name.LocalName));
        Assert.All(Root.Elements().Take(2), e => Assert.False(string.IsNullOrWhiteSpace(e.Value)));
        Assert.All(Rects, r => Assert.True(r.X >= -0.5 && r.Y >= -0.5 && r.X + r.W <= Width + 0.5 && r.Y + r.H <= Height + 0.5 && r.W >= 0 && r.H >= 0, r.ToString()));
        Assert.All(Texts, t => Assert.True(t.X >= 0 && t.Y >= 0 && t.X <= Width && t.Y <= Height, t.ToString()));
        Assert.All(Root.Descendants(), e => Assert.Contains(e.Name.LocalName, (string[])["title", "desc", "style", "rect", "path", "text", "circle"]));
        Assert.DoesNotContain("NaN", Root.ToString(), StringComparison.Ordinal);
    }

    public bool Says(string text) => Texts.Any(t => t.Text.Contains(text, StringComparison.Ordinal));

    public static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static double Of(XElement element, string name) => Number(element.Attribute(name)!.Value);
}
