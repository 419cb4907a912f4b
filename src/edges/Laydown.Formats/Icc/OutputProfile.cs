using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;

namespace Laydown.Formats.Icc;

/// <summary>Writes an output profile (PCS Lab) of 3 to 8 inks from tables of our own: CMYK for four inks, else nCLR.</summary>
/// <remarks>
/// AToB and BToA for the perceptual and colorimetric intents; saturation shares the colorimetric tables. 16-bit tables. The same
/// tables give the same bytes. [ICC1]
/// The curves of BToA bring each colour to its place among the nodes; white lies on a node.
/// </remarks>
public static class OutputProfile
{
    private const double OutsideGamut = 1.5;

    /// <summary>The bytes of a CMYK profile of edition 2.</summary>
    /// <param name="tables">The tables, four inks.</param>
    /// <param name="description">Name for people, ASCII; says "invented" where the print is.</param>
    /// <param name="rights">Copyright line, ASCII.</param>
    /// <exception cref="ArgumentException">A text is empty or not ASCII, or the tables have another number of inks than four.</exception>
    public static byte[] Write(ProfileTables tables, string description, string rights) =>
        Write(tables, description, rights, OutputProfileOptions.Usual);

    /// <summary>The profile's bytes.</summary>
    /// <param name="tables">The tables, 3 to 8 inks.</param>
    /// <param name="description">Name for people, ASCII; says "invented" where the print is.</param>
    /// <param name="rights">Copyright line, ASCII.</param>
    /// <param name="options">Edition, ink names (needed for all but four inks), readings, limits.</param>
    /// <exception cref="ArgumentException">A text is empty or not ASCII, names or limits do not fit the inks, or a table does not fit
    /// its steps.</exception>
    public static byte[] Write(ProfileTables tables, string description, string rights, OutputProfileOptions options)
    {
        Require(tables, options);
        using ProfileWriter writer = new(
            options.Edition, ProfileWriter.OutputClass, ProfileWriter.SpaceOf(tables.Inks), ProfileWriter.LabSpace);
        writer.Text(0x64657363, description);
        writer.Text(0x63707274, rights);
        Xyz white = tables.MediaWhite;
        writer.Xyz(0x77747074, [white.X / 100, white.Y / 100, white.Z / 100]);
        if (options.Edition == IccEdition.V4)
            writer.Raw(RawTags.Adaptation, RawTags.NoAdaptation());
        if (options.InkNames.Count > 0)
            writer.Raw(RawTags.ColorantTable, RawTags.Colorants(options.InkNames, [.. Enumerable.Range(0, tables.Inks).Select(i => Solid(tables, i))]));
        if (options.Readings.Length > 0)
            writer.Raw(RawTags.Target, RawTags.Text(options.Readings));
        WriteTables(writer, tables, options);
        return writer.Save();
    }

    private static void WriteTables(ProfileWriter writer, ProfileTables tables, OutputProfileOptions options)
    {
        const uint aToB0 = 0x41324230, aToB1 = 0x41324231, aToB2 = 0x41324232, bToA0 = 0x42324130, bToA1 = 0x42324131, bToA2 = 0x42324132;
        bool four = options.Edition == IccEdition.V4;
        ushort[] forward = [.. tables.Forward.SelectMany(lab => four ? InkCodes.Lab4(lab) : InkCodes.Lab2(lab))];
        writer.Table(aToB0, After(four, tables.Inks), (tables.ForwardSteps, tables.Inks, 3), forward, After(four, 3));
        writer.Same(aToB1, aToB0);
        writer.Same(aToB2, aToB0);

        ushort[][] curves = four ? AxisCurves.Edition4(tables.Axes) : AxisCurves.Edition2(tables.Axes);
        (int, int, int) shape = (tables.InverseSteps, 3, tables.Inks);
        writer.Table(bToA0, curves, shape, Inks(tables.Perceptual, tables.Inks, options.Limits), After(four, tables.Inks));
        writer.Table(bToA1, curves, shape, Inks(tables.Colorimetric, tables.Inks, options.Limits), After(four, tables.Inks));
        writer.Same(bToA2, bToA1);
        writer.Table(0x67616D74, curves, (tables.InverseSteps, 3, 1), [.. tables.Distance.Select(EncodeGamut)], After(four, 1));
    }

    // Edition 4 wants curves on both sides of a table, edition 2 takes a bare one.
    private static ushort[][] After(bool four, int channels) => four ? [.. Enumerable.Repeat<ushort[]>([0, 65535], channels)] : [];

    private static ushort[] Inks(IReadOnlyList<float> inks, int count, InkLimits? limits)
    {
        ushort[] caps = [.. Enumerable.Range(0, count).Select(i => limits is null ? ushort.MaxValue : InkCodes.Cap(limits.PerInk[i]))];
        return [.. inks.Select((ink, i) => Math.Min(caps[i % count], InkCodes.Ink(ink)))];
    }

    private static Lab Solid(ProfileTables tables, int ink)
    {
        int stride = 1;
        for (int i = tables.Inks - 1; i > ink; i--)
            stride *= tables.ForwardSteps;
        return tables.Forward[(tables.ForwardSteps - 1) * stride];
    }

    private static void Require(ProfileTables tables, OutputProfileOptions options)
    {
        if (tables.Inks is < 3 or > 8)
            throw new ArgumentException(Invariant($"{tables.Inks} inks: wanted 3 to 8."), nameof(tables));
        int names = options.InkNames.Count;
        if (names != tables.Inks && !(names == 0 && tables.Inks == 4))
            throw new ArgumentException(Invariant($"{names} ink names for {tables.Inks} inks: wanted one for each."), nameof(options));
        if (options.InkNames.Any(n => n.Length is 0 or > 31 || !n.All(char.IsAscii)) || !options.Readings.All(char.IsAscii))
            throw new ArgumentException("Ink names and readings: wanted ASCII, names of 1 to 31 characters.", nameof(options));
        if (options.Limits is { } limits && limits.PerInk.Count != tables.Inks)
            throw new ArgumentException(Invariant($"{limits.PerInk.Count} limits for {tables.Inks} inks: wanted one for each."), nameof(options));
        long nodes = (long)tables.InverseSteps * tables.InverseSteps * tables.InverseSteps;
        if (tables.Forward.Count != Math.Pow(tables.ForwardSteps, tables.Inks) || tables.Distance.Count != nodes
            || tables.Colorimetric.Count != nodes * tables.Inks || tables.Perceptual.Count != nodes * tables.Inks)
            throw new ArgumentException("Profile tables: wanted as many entries as their steps and inks ask for.", nameof(tables));
    }

    private static ushort EncodeGamut(float distance) => distance < OutsideGamut ? (ushort)0 : InkCodes.Code(256 * distance);
}
