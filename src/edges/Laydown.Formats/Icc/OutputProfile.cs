using System.Text;
using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;

namespace Laydown.Formats.Icc;

/// <summary>Writes a CMYK output profile (ICC v2.4, PCS Lab) from tables of our own.</summary>
/// <remarks>
/// AToB and BToA for the perceptual and colorimetric intents; saturation shares the colorimetric tables. 16-bit tables. The same
/// tables give the same bytes.
/// The L* curve of BToA stretches 0 to 100 over all nodes, so that white lies on a node.
/// </remarks>
public static class OutputProfile
{
    private const double OutsideGamut = 1.5;

    /// <summary>The profile's bytes.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="description">Name for people, ASCII; says "invented" where the print is.</param>
    /// <param name="rights">Copyright line, ASCII.</param>
    /// <exception cref="ArgumentException">A text is empty or not ASCII.</exception>
    public static byte[] Write(ProfileTables tables, string description, string rights)
    {
        byte[] name = AsciiZ(description), copyright = AsciiZ(rights);
        using CmsContext context = new();
        nint profile = LittleCms.CreatePlaceholder(context.Handle);
        try
        {
            LittleCms.SetProfileVersion(profile, 2.4);
            LittleCms.SetDeviceClass(profile, 0x70727472);
            LittleCms.SetColorSpace(profile, 0x434D594B);
            LittleCms.SetPcs(profile, 0x4C616220);
            WriteText(context, profile, 0x64657363, name);
            WriteText(context, profile, 0x63707274, copyright);
            Xyz white = tables.MediaWhite;
            Check(LittleCms.WriteXyzTag(profile, 0x77747074, [white.X / 100, white.Y / 100, white.Z / 100]), context);
            WriteTables(context, profile, tables);
            return ProfileBytes.Save(profile, context);
        }
        finally
        {
            _ = LittleCms.CloseProfile(profile);
        }
    }

    private static void WriteTables(CmsContext context, nint profile, ProfileTables tables)
    {
        const uint aToB0 = 0x41324230, aToB1 = 0x41324231, aToB2 = 0x41324232, bToA0 = 0x42324130, bToA1 = 0x42324131, bToA2 = 0x42324132;
        ushort[] forward = [.. tables.Forward.SelectMany(EncodeLab)];
        WritePipeline(context, profile, aToB0, [], (tables.ForwardSteps, 4, 3), forward);
        Check(LittleCms.LinkTag(profile, aToB1, aToB0), context);
        Check(LittleCms.LinkTag(profile, aToB2, aToB0), context);

        // The curve's last entry but one stands for L* = 100, code 65280.
        ushort[] stretch = [.. Enumerable.Range(0, 258).Select(i => (ushort)Math.Min(65535, Math.Round(i * 65535 / 256.0)))];
        ushort[] plain = [.. Enumerable.Range(0, 258).Select(i => (ushort)Math.Round(i * 65535 / 257.0))];
        ushort[][] curves = [stretch, plain, plain];
        WritePipeline(context, profile, bToA0, curves, (tables.InverseSteps, 3, 4), [.. tables.Perceptual.Select(EncodeInk)]);
        WritePipeline(context, profile, bToA1, curves, (tables.InverseSteps, 3, 4), [.. tables.Colorimetric.Select(EncodeInk)]);
        Check(LittleCms.LinkTag(profile, bToA2, bToA1), context);
        WritePipeline(context, profile, 0x67616D74, curves, (tables.InverseSteps, 3, 1), [.. tables.Distance.Select(EncodeGamut)]);
    }

    private static void WritePipeline(
        CmsContext context, nint profile, uint signature, ushort[][] curves, (int Steps, int Inputs, int Outputs) shape, ushort[] table)
    {
        nint pipeline = LittleCms.AllocPipeline(context.Handle, (uint)shape.Inputs, (uint)shape.Outputs);
        try
        {
            if (curves.Length > 0)
            {
                nint[] built = [.. curves.Select(c => LittleCms.BuildCurve(context.Handle, (uint)c.Length, c))];
                Check(LittleCms.InsertStage(pipeline, 1, LittleCms.AllocCurves(context.Handle, (uint)built.Length, built)), context);
                foreach (nint curve in built)
                    LittleCms.FreeCurve(curve);
            }

            nint grid = LittleCms.AllocTable(context.Handle, (uint)shape.Steps, (uint)shape.Inputs, (uint)shape.Outputs, table);
            Check(LittleCms.InsertStage(pipeline, 1, grid), context);
            Check(LittleCms.WriteTag(profile, signature, pipeline), context);
        }
        finally
        {
            LittleCms.FreePipeline(pipeline);
        }
    }

    private static unsafe void WriteText(CmsContext context, nint profile, uint signature, byte[] text)
    {
        nint made = LittleCms.AllocText(context.Handle, 1);
        try
        {
            fixed (byte* language = "en\0"u8, country = "GB\0"u8)
                Check(LittleCms.SetText(made, language, country, text), context);
            Check(LittleCms.WriteTag(profile, signature, made), context);
        }
        finally
        {
            LittleCms.FreeText(made);
        }
    }

    private static byte[] AsciiZ(string text) => text.Length > 0 && text.All(char.IsAscii)
        ? [.. Encoding.ASCII.GetBytes(text), 0]
        : throw new ArgumentException(Invariant($"Profile text \"{text}\": wanted at least one character, all ASCII."), nameof(text));

    // Lab of ICC v2 in 16 bits: L* 100 is 65280, a* and b* 0 are 32768.
    private static ushort[] EncodeLab(Lab lab) =>
        [Code(lab.L * 652.8), Code((lab.A + 128) * 256), Code((lab.B + 128) * 256)];

    private static ushort EncodeInk(float ink) => Code(Math.Floor(ink * 65535.0));

    private static ushort EncodeGamut(float distance) => distance < OutsideGamut ? (ushort)0 : Code(256 * distance);

    private static ushort Code(double value) => (ushort)Math.Clamp(Math.Round(value), 0, 65535);

    private static void Check(int done, CmsContext context)
    {
        if (done == 0)
            throw new InvalidOperationException(Invariant($"Little CMS refused a part of the profile: {context.Said}."));
    }
}
