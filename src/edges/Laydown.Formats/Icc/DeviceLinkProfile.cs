using Laydown.Colour.Inversion;

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
