using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Tokens;

namespace Laydown.Formats.Pdf;

/// <summary>Reads optional content: which groups there are, which are off by default, which stand for a processing step.</summary>
internal sealed class LayerReader
{
    private readonly PdfObjects objects;
    private readonly HashSet<IndirectReference> on;
    private readonly HashSet<IndirectReference> off;
    private readonly bool offUnlessListed;

    public LayerReader(PdfObjects objects, DictionaryToken catalog)
    {
        this.objects = objects;
        var usual = objects.Dictionary(objects.Dictionary(catalog, "OCProperties"), "D");
        offUnlessListed = objects.Text(usual, "BaseState") == "OFF";
        on = References(usual, "ON");
        off = References(usual, "OFF");
    }

    /// <summary>The layer of an <c>OC</c> entry or property: a group, or the first group of a membership; null for anything else.</summary>
    public Layer? Read(IToken? token)
    {
        if (objects.AsDictionary(token) is not { } dictionary)
            return null;
        if (objects.Text(dictionary, "Type") == "OCMD")
            return Membership(dictionary);
        if (objects.Text(dictionary, "Type") != "OCG")
            return null;

        return new(objects.Text(dictionary, "Name") ?? "layer without a name", Step(dictionary), IsHidden(token));
    }

    private Layer? Membership(DictionaryToken membership)
    {
        if (!membership.Data.TryGetValue("OCGs", out var groups))
            return null;
        if (objects.Resolve(groups) is not ArrayToken array)
            return Read(groups);

        // Shown when any group is on, the usual policy: hidden only when all are.
        var layers = array.Data.Take(100).Select(g => objects.Text(objects.AsDictionary(g), "Type") == "OCG" ? Read(g) : null).OfType<Layer>().ToList();
        return layers.Count == 0 ? null : layers[0] with { Hidden = layers.All(l => l.Hidden) };
    }

    private string? Step(DictionaryToken group)
    {
        var metadata = objects.Dictionary(group, "GTS_Metadata");
        string? name = objects.Text(metadata, "GTS_ProcStepsGroup");
        string? type = objects.Text(metadata, "GTS_ProcStepsType");
        return name is null ? null : type is null ? name : name + "/" + type;
    }

    private bool IsHidden(IToken? token) => token is IndirectReferenceToken reference
        && (off.Contains(reference.Data) || (offUnlessListed && !on.Contains(reference.Data)));

    private HashSet<IndirectReference> References(DictionaryToken? from, string key) =>
        [.. (objects.Get<ArrayToken>(from, key)?.Data ?? []).OfType<IndirectReferenceToken>().Select(r => r.Data)];
}
