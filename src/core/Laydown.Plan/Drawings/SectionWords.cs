using Laydown.Plan.Build;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Drawings;

/// <summary>What a section says: of each layer what it is and does in this light, and of each viewer what he sees.</summary>
internal sealed class SectionWords
{
    private const int LineLength = 29, SentenceLength = 52;

    private readonly LayerStack stack;
    private readonly Stock stock;
    private readonly bool lit;
    private readonly List<(Viewer Viewer, IReadOnlyList<LayerSight> Sights)> views;

    /// <summary>The words of a stack in one light.</summary>
    internal SectionWords(LayerStack stack, Stock stock, bool lit)
    {
        (this.stack, this.stock, this.lit) = (stack, stock, lit);
        views = [.. stack.Viewers.Select(v => (v, StackSight.Of(stack, stock, v)))];
    }

    /// <summary>The sheet's name, cut to one line.</summary>
    internal static string Sheet(Stock stock) => Broken(stock.Name, 24) is [string one] ? one : Broken(stock.Name, 23)[0] + "…";

    /// <summary>What the sheet is.</summary>
    internal static IReadOnlyList<string> SheetDetail(Stock stock) => Broken(Invariant(
        $"{stock.Material}, {LayerWords.Light(stock.Light)}, {stock.ThicknessMm:0.##} ± {stock.ThicknessToleranceMm:0.##} mm{(stock.Light == SheetLight.Opaque ? "" : Invariant($", lets {stock.TransmittancePercent:0.#} % of a lamp through"))}"), LineLength);

    /// <summary>Source, strength, choke, reading direction.</summary>
    internal static IReadOnlyList<string> Detail(Layer layer) => Broken(LayerWords.Detail(layer), LineLength);

    /// <summary>What a layer does in this light; nothing for the sheet.</summary>
    internal IReadOnlyList<string> Role(int index)
    {
        if (index < 0)
            return lit && stock.Light == SheetLight.Opaque ? ["stops the lamp's light"] : [];
        return stack.Layers[index].Group switch
        {
            InkGroup.Colour => Broken(OfPicture(index), LineLength),
            InkGroup.White => OfWhite(index),
            InkGroup.BlockOut => Broken(stack.Layers[index].IsFlood ? "lets no light through" : "lets light through its windows only", LineLength),
            _ => [],
        };
    }

    /// <summary>What each viewer sees, in lines.</summary>
    internal IReadOnlyList<string> Seen() => [.. views.SelectMany(v => Broken(Sentence(v.Viewer, v.Sights), SentenceLength))];

    private string OfPicture(int index)
    {
        List<string> who = [.. views.Where(v => In(v.Sights[index]) != Sight.Not).Select(v => views.Count == 1 ? "you" : v.Viewer == Viewer.Front ? "in front" : "at the back")];
        bool parts = views.All(v => In(v.Sights[index]) != Sight.Whole);
        if (who.Count == 0)
            return lit ? "no lamp light: not seen" : "hidden: not seen by day";
        string seen = views.Count == 1 ? "you see it" : Invariant($"seen {string.Join(" and ", who)}");
        return seen + (lit ? parts ? " lit, in the window" : " lit" : parts ? ", in parts" : "");
    }

    private IReadOnlyList<string> OfWhite(int index)
    {
        bool reached = views.Exists(v => StackSight.Reached(stack, stock, StackSight.Path(stack, v.Viewer), Array.IndexOf(StackSight.Path(stack, v.Viewer), index)) != Sight.Not);
        Layer layer = stack.Layers[index];
        string where = layer.IsFlood || layer.Source is WhiteSource.UnderImage or WhiteSource.Inverse ? "" : layer.Negative ? ", not in the window" : ", where its mask has ink";
        string does = lit
            ? views[0].Sights[index].Lit == Sight.Not ? "no lamp light comes here" : "spreads the lamp's light"
            : reached ? "returns the room's light" : "hidden";
        return Broken(does + (does[0] is 's' or 'r' ? where : ""), LineLength);
    }

    private Sight In(LayerSight sight) => lit ? sight.Lit : sight.Day;

    private string Sentence(Viewer viewer, IReadOnlyList<LayerSight> sights)
    {
        string who = views.Count == 1 ? "You see" : viewer == Viewer.Front ? "In front you see" : "At the back you see";
        List<int> pages = PagesOf(sights, Sight.Whole), parts = [.. PagesOf(sights, Sight.Partly).Except(pages)];
        if (pages.Count + parts.Count == 0)
            return Invariant($"{who} no picture.");
        string whole = pages.Count switch
        {
            0 => "",
            1 => Invariant($"the picture of page {pages[0]}"),
            _ => Invariant($"the pictures of pages {string.Join(" and ", pages)}, one through the other"),
        };
        string some = parts.Count == 0 ? "" : Invariant($"parts of page {string.Join(" and ", parts)}");
        return Invariant($"{who} {whole}{(whole.Length > 0 && some.Length > 0 ? " and " : "")}{some}.");
    }

    private List<int> PagesOf(IReadOnlyList<LayerSight> sights, Sight sight) =>
        [.. stack.Layers.Index().Where(l => l.Item.Group == InkGroup.Colour && In(sights[l.Index]) == sight).Select(l => l.Item.ArtworkPage).Distinct().Order()];

    /// <summary>A text in lines of at most so many characters, broken between words.</summary>
    private static IReadOnlyList<string> Broken(string text, int most)
    {
        List<string> lines = [""];
        foreach (string word in text.Split(' '))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + word.Length > most)
                lines.Add("");
            lines[^1] += (lines[^1].Length > 0 ? " " : "") + word;
        }

        return lines;
    }
}
