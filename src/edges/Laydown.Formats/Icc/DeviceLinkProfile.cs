using System.Text;
using Laydown.Colour.Inversion;
using Laydown.Measures;

namespace Laydown.Formats.Icc;

/// <summary>A device link profile (ICC v4.3): from RGB or CMYK straight to 3 to 8 inks. [ICC1]</summary>
public static class DeviceLinkProfile
{
    private const uint AToB0 = 0x41324230;

    /// <summary>The bytes of a link; the same tables give the same bytes. Inks are rounded down.</summary>
    /// <param name="tables">The link.</param>
    /// <param name="description">Name for people, ASCII.</param>
    /// <param name="rights">Copyright line, ASCII.</param>
    /// <param name="source">Name of the profile that the picture is in, ASCII.</param>
    /// <param name="target">Name of the print condition, ASCII.</param>
    /// <exception cref="ArgumentException">A text is empty or not ASCII, or the tables do not fit their own numbers.</exception>
    public static byte[] Write(LinkTables tables, string description, string rights, string source, string target)
    {
        int inks = tables.InkNames.Count;
        Require(tables, inks);
        using ProfileWriter writer = new(
            IccEdition.V4, ProfileWriter.LinkClass, tables.Channels == 3 ? ProfileWriter.Rgb : ProfileWriter.Cmyk, ProfileWriter.SpaceOf(inks));
        writer.Text(0x64657363, description);
        writer.Text(0x63707274, rights);
        writer.Raw(RawTags.Sequence, RawTags.ProfileSequence(source, target));

        // A link knows no colours: the names stand beside a Lab of 0.
        writer.Raw(RawTags.ColorantTableOut, RawTags.Colorants(tables.InkNames, new Colour.Spaces.Lab[inks]));
        writer.Table(
            AToB0, [.. tables.PreCurves.Select(c => c.Select(v => InkCodes.Code(v * 65535.0)).ToArray())], (tables.Steps, tables.Channels, inks),
            [.. tables.Table.Select(InkCodes.Ink)], [.. Enumerable.Repeat<ushort[]>([0, 65535], inks)]);
        return writer.Save();
    }

    /// <summary>Takes a link from the shop's folder.</summary>
    /// <param name="file">Name for messages.</param>
    /// <param name="bytes">The whole profile, hostile or not.</param>
    /// <returns>The tables, or the tag that is wrong. Curves after the table are worked into its nodes; a link without ink names gets
    /// "Ink 1" and so on; uneven grids are refused.</returns>
    public static Reading<LinkTables> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        try
        {
            return Reading.Of(Tables(new(bytes)));
        }
        catch (TagFaultException fault)
        {
            return Reading.Refused<LinkTables>(new InputFault(file, null, "ICC " + fault.Tag.Trim(), fault.Found, fault.Wanted));
        }
    }

    private static LinkTables Tables(TagTable tags)
    {
        int channels = TagTable.Channels(tags.Space), inks = TagTable.Channels(tags.Connection);
        if (tags.Class != "link" || tags.Space is not ("RGB " or "CMYK") || inks < 3 || tags.Connection is "RGB " or "Lab " or "XYZ ")
            throw new TagFaultException(
                "header", Invariant($"class {tags.Class}, {tags.Space} to {tags.Connection}"), "class link, RGB or CMYK to 3 to 8 inks");
        LutPipeline lut = LutPipeline.Read(tags, "A2B0", channels, inks, fromXyz: false);
        if (lut.Grid is not { } grid || lut.Before is not { } before || !lut.EndsPlain || grid.Steps.Distinct().Count() != 1)
            throw new TagFaultException("A2B0", "no table, an uneven one, or a matrix", "curves, an even table, curves");

        float[][] curves = [.. before.Select(c => Enumerable.Range(0, c.Samples.Count > 0 ? c.Samples.Count : 256)
            .Select(i => (float)Math.Clamp(c.At(i / ((c.Samples.Count > 0 ? c.Samples.Count : 256) - 1.0)), 0, 1)).ToArray())];
        if (curves.Any(c => c.Length > 4096 || c.Zip(c.Skip(1)).Any(p => p.Second < p.First)))
            throw new TagFaultException("A2B0", "a curve that falls or has over 4096 entries", "rising curves");
        return new(channels, Names(tags, inks), curves, grid.Steps[0], Nodes(lut, grid.Steps[0], channels, inks));
    }

    private static float[] Nodes(LutPipeline lut, int steps, int channels, int inks)
    {
        float[] table = new float[(int)Math.Pow(steps, channels) * inks];
        double[] node = new double[channels];
        for (int n = 0; n < table.Length / inks; n++)
        {
            for (int c = channels - 1, rest = n; c >= 0; c--, rest /= steps)
                node[c] = rest % steps / (steps - 1.0);
            double[] seen = lut.FromGrid(node);
            for (int i = 0; i < inks; i++)
                table[(n * inks) + i] = (float)Math.Clamp(seen[i], 0, 1);
        }

        return table;
    }

    private static string[] Names(TagTable tags, int inks)
    {
        if (!tags.Has("clot"))
            return inks == 4 ? ["Cyan", "Magenta", "Yellow", "Black"] : [.. Enumerable.Range(1, inks).Select(i => Invariant($"Ink {i}"))];
        byte[] tag = tags.Tag("clot").ToArray();
        if (tag.Length < 12 + (38 * inks) || TagTable.Ascii(tag.AsSpan(0, 4)) != "clrt" || TagTable.U32(tag.AsSpan(8)) != inks)
            throw new TagFaultException("clot", Invariant($"{tag.Length} bytes"), Invariant($"names of {inks} inks"));
        string[] names = [.. Enumerable.Range(0, inks).Select(i => Encoding.Latin1.GetString(tag, 12 + (38 * i), 32).Split('\0')[0])];
        return names.All(n => n.Length is > 0 and < 32 && n.All(c => c is >= ' ' and < (char)127))
            ? names
            : throw new TagFaultException("clot", "names empty or of other characters", "ASCII, 1 to 31 characters");
    }

    private static void Require(LinkTables tables, int inks)
    {
        if (tables.Channels is not (3 or 4) || inks is < 3 or > 8)
            throw new ArgumentException(Invariant($"{tables.Channels} channels to {inks} inks: wanted 3 or 4 to 3 to 8."), nameof(tables));
        if (tables.InkNames.Any(n => n.Length is 0 or > 31 || !n.All(char.IsAscii)))
            throw new ArgumentException("Ink names: wanted 1 to 31 characters, ASCII.", nameof(tables));
        if (tables.PreCurves.Count != tables.Channels || tables.PreCurves.Any(c => c.Count is < 2 or > 4096))
            throw new ArgumentException("Curves: wanted one for each channel, 2 to 4096 values each.", nameof(tables));
        if (tables.Steps is < 2 or > 255 || tables.Table.Count != Math.Pow(tables.Steps, tables.Channels) * inks)
            throw new ArgumentException(
                Invariant($"{tables.Table.Count} table values for {tables.Steps} steps: wanted steps^channels × inks."), nameof(tables));
    }
}
