using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Laydown.Colour.Readings;
using Laydown.Formats.Patches;
using Laydown.Measures;
using static Laydown.Formats.Cxf.CxfNames;

namespace Laydown.Formats.Cxf;

/// <summary>Reads CxF3 XML [ISO17972-1]: reflectance spectra, Lab or XYZ beside process inks and further inks.</summary>
/// <remarks>
/// A measurement without inks takes them from the target with the same SampleID. Where a patch was measured under several conditions,
/// M1 is taken, else the first. Spectra go before Lab, Lab before XYZ. A DTD is refused. At most 64 MiB and 200 000 patches.
/// </remarks>
public static partial class CxfReader
{
    /// <summary>The readings of a file, or why they cannot be taken.</summary>
    /// <param name="file">Name of the file without its folder.</param>
    /// <param name="bytes">The whole file.</param>
    public static Reading<ReadingSet> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        if (PatchLimits.Refuse(file, bytes.Length) is { } size)
            return Reading.Refused<ReadingSet>(size);

        // Some programs write the zero that ends a text in memory.
        bytes = bytes.TrimEnd((byte)0);
        using MemoryStream stream = MemoryMarshal.TryGetArray(bytes, out ArraySegment<byte> part)
            ? new(part.Array!, part.Offset, part.Count, writable: false)
            : new(bytes.ToArray(), writable: false);
        return CxfContent.Read(file, stream).Then(content => Choose(file, content));
    }

    private static Reading<ReadingSet> Choose(string file, CxfContent content)
    {
        List<CxfObject> measured = content.Objects.FindAll(o => o.IsMeasured);
        if (measured.Count == 0)
            return Refused(file, "ColorValues", Invariant($"{content.Objects.Count} objects, none with a colour"), "ReflectanceSpectrum, ColorCIELab or ColorCIEXYZ");
        List<string> types = [.. measured.Select(o => o.Type).Distinct(StringComparer.Ordinal)];
        string taken = types.Find(t => t.StartsWith("M1", StringComparison.Ordinal)) ?? types[0];
        string[] notes = types.Count == 1 ? [] : [Invariant($"of the kinds {string.Join(", ", types)} of objects, {taken} was taken")];
        measured = measured.FindAll(o => o.Type == taken);
        return InksOf(file, content, measured).Then(inks => Table(file, content, measured, inks, notes));
    }

    // For each measurement its inks: its own, or those of the target with its id.
    private static Reading<List<IReadOnlyList<(string Ink, string Value)>>> InksOf(string file, CxfContent content, List<CxfObject> measured)
    {
        Dictionary<string, CxfObject> targets = new(StringComparer.Ordinal);
        foreach (CxfObject target in content.Objects.Where(o => o.Inks.Count > 0 && o.Key is not null))
        {
            if (!targets.TryAdd(target.Key!, target) && !target.Inks.SequenceEqual(targets[target.Key!].Inks))
                return RefusedInks(file, target.Number, Invariant($"sample {target.Key} with other inks than in object {targets[target.Key!].Number}"), "one set of inks for each sample");
        }

        List<IReadOnlyList<(string Ink, string Value)>> inks = [];
        foreach (CxfObject one in measured)
        {
            IReadOnlyList<(string Ink, string Value)> own = one.Inks.Count > 0 ? one.Inks
                : one.Key is not null && targets.TryGetValue(one.Key, out CxfObject? target) ? target.Inks : [];
            if (own.Count == 0)
                return RefusedInks(file, one.Number, one.OtherDevice ?? Invariant($"patch {one.Name} without inks"), "ColorCMYK or ColorCMYKPlusN, in the object or in a target with its SampleID");
            inks.Add(own);
        }

        return Reading.Of(inks);
    }

    private static Reading<ReadingSet> Table(
        string file, CxfContent content, List<CxfObject> measured, List<IReadOnlyList<(string Ink, string Value)>> inks, IReadOnlyList<string> notes)
    {
        // Inks in the order in which they first come, or as the file lists them; one that a patch does not name is 0.
        string[] all = [.. inks.SelectMany(i => i.Select(k => k.Ink)).Distinct(StringComparer.Ordinal)];
        string[] listed = content.About.GetValueOrDefault("Inks", "").Split('|', StringSplitOptions.RemoveEmptyEntries);
        string[] names = listed.Length > 0 && listed.All(all.Contains) ? listed : all;
        Reading<Colours> colours = measured[0].Spectrum is not null ? Spectra(file, content, measured) : Tristimulus(file, content, measured);
        return colours.Then(colour =>
        {
            List<PatchRow> rows = [.. measured.Select((one, i) => new PatchRow(
                one.Number, [one.Name, .. names.Select(n => inks[i].Where(k => k.Ink == n).Select(k => k.Value).FirstOrDefault("0")), .. colour.Values[i]]))];
            return new PatchTableReader(new(file, NameOf(file, content), How(content, measured[0]), "", ["SAMPLE_ID", .. names, .. colour.Fields], rows, notes)
            {
                SureInks = names,
                RowWord = "object",
            }).Read();
        });
    }

    private static Reading<Colours> Spectra(string file, CxfContent content, List<CxfObject> measured)
    {
        string? bands = null;
        int count = 0;
        List<string[]> values = new(measured.Count);
        foreach (CxfObject one in measured)
        {
            CxfSpec spec = SpecOf(content, one.Spectrum);
            string start = (string?)one.Spectrum?.Attribute("StartWL") ?? spec.Start;
            string step = (string?)one.Spectrum?.Attribute("Increment") ?? (spec.Increment.Length > 0 ? spec.Increment : "10");
            string[] words = one.Spectrum?.Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries) ?? [];
            string own = Invariant($"{start} nm every {step} nm, {words.Length} bands");
            bands ??= own;
            if (own != bands || words.Length is < 2 or > PatchLimits.Fields || !Whole(start, out _) || !Whole(step, out _))
                return RefusedColour(file, one.Number, "ReflectanceSpectrum", own, "StartWL and step in nm, the same bands for all patches");
            count = words.Length;
            values.Add(words);
        }

        _ = Whole((string?)measured[0].Spectrum!.Attribute("StartWL") ?? SpecOf(content, measured[0].Spectrum).Start, out int first);
        string increment = (string?)measured[0].Spectrum!.Attribute("Increment") ?? SpecOf(content, measured[0].Spectrum).Increment;
        int nm = Whole(increment, out int given) ? given : 10;
        return Reading.Of(new Colours([.. Enumerable.Range(0, count).Select(b => Invariant($"SPECTRAL_NM{first + (nm * b)}"))], values));
    }

    private static Reading<Colours> Tristimulus(string file, CxfContent content, List<CxfObject> measured)
    {
        bool lab = measured[0].Labs.Count > 0;
        string[] names = lab ? ["L", "A", "B"] : ["X", "Y", "Z"];
        List<string[]> values = new(measured.Count);
        foreach (CxfObject one in measured)
        {
            // Of several lights the one that fits is taken.
            IReadOnlyList<XElement> colours = lab ? one.Labs : one.Xyzs;
            XElement? fit = colours.FirstOrDefault(c => SpecOf(content, c).Unfit() is null);
            if (fit is null)
                return RefusedColour(file, one.Number, lab ? "ColorCIELab" : "ColorCIEXYZ", colours.Count == 0 ? "none" : SpecOf(content, colours[0]).Unfit()!, "a colour under D50 for 2°, or spectra");
            values.Add([.. names.Select(n => fit.Element(Core + n)?.Value.Trim() ?? "")]);
        }

        return Reading.Of(new Colours([.. names.Select(n => (lab ? "LAB_" : "XYZ_") + n)], values));
    }

    private static CxfSpec SpecOf(CxfContent content, XElement? colour) =>
        content.Specs.GetValueOrDefault((string?)colour?.Attribute("ColorSpecification") ?? "", CxfSpec.None);

    private static bool Whole(string text, out int value) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value)
        || (FileNumber.TryRead(text, out double nm) && nm is > 0 and < 3000 && nm == Math.Round(nm) && (value = (int)nm) > 0);

    private static string NameOf(string file, CxfContent content) => content.About.GetValueOrDefault("Description", "") is { Length: > 0 } name ? name : file;

    private static MeasuredHow How(CxfContent content, CxfObject first)
    {
        CxfSpec spec = SpecOf(content, first.Spectrum ?? first.Labs.Concat(first.Xyzs).FirstOrDefault());
        string Said(string name, string other) => content.About.GetValueOrDefault(name, other);
        string condition = Condition().Match(first.Type) is { Success: true } typed ? typed.Value : spec.Condition;
        return new(
            Said("Instrument", spec.Instrument), Said("Condition", condition), Said("Backing", spec.Backing),
            Said("Created", content.About.GetValueOrDefault("CreationDate", "")), Said("Statement", ""));
    }

    private static Reading<ReadingSet> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<ReadingSet>(new InputFault(file, null, field, found, wanted));

    private static Reading<List<IReadOnlyList<(string Ink, string Value)>>> RefusedInks(string file, int number, string found, string wanted) =>
        Reading.Refused<List<IReadOnlyList<(string Ink, string Value)>>>(new InputFault(file, null, Invariant($"object {number}, DeviceColorValues"), found, wanted));

    private static Reading<Colours> RefusedColour(string file, int number, string field, string found, string wanted) =>
        Reading.Refused<Colours>(new InputFault(file, null, Invariant($"object {number}, {field}"), found, wanted));

    [GeneratedRegex("^M[0-3](?=_|$)", RegexOptions.CultureInvariant)]
    private static partial Regex Condition();

    private sealed record Colours(IReadOnlyList<string> Fields, IReadOnlyList<string[]> Values);
}
