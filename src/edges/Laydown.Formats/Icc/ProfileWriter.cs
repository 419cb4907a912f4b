using System.Text;

namespace Laydown.Formats.Icc;

/// <summary>A profile under way in Little CMS: header, texts, tables, then its bytes.</summary>
internal sealed class ProfileWriter : IDisposable
{
    internal const uint OutputClass = 0x70727472, LinkClass = 0x6C696E6B, Cmyk = 0x434D594B, Rgb = 0x52474220, LabSpace = 0x4C616220;

    private readonly CmsContext context = new();
    private readonly nint profile;

    internal ProfileWriter(IccEdition edition, uint kind, uint space, uint connection)
    {
        profile = LittleCms.CreatePlaceholder(context.Handle);
        LittleCms.SetProfileVersion(profile, edition == IccEdition.V4 ? 4.3 : 2.4);
        LittleCms.SetDeviceClass(profile, kind);
        LittleCms.SetColorSpace(profile, space);
        LittleCms.SetPcs(profile, connection);
    }

    /// <summary>Signature of the space of so many inks: CMYK for four.</summary>
    internal static uint SpaceOf(int inks) => inks == 4 ? Cmyk : 0x30434C52 + ((uint)inks << 24);

    /// <summary>Text in ASCII.</summary>
    internal unsafe void Text(uint signature, string text)
    {
        nint made = LittleCms.AllocText(context.Handle, 1);
        try
        {
            fixed (byte* language = "en\0"u8, country = "GB\0"u8)
                Check(LittleCms.SetText(made, language, country, AsciiZ(text)));
            Check(LittleCms.WriteTag(profile, signature, made));
        }
        finally
        {
            LittleCms.FreeText(made);
        }
    }

    /// <summary>Tristimulus values, Y of the perfect diffuser = 1.</summary>
    internal void Xyz(uint signature, ReadOnlySpan<double> xyz) => Check(LittleCms.WriteXyzTag(profile, signature, xyz));

    /// <summary>A tag as it stands.</summary>
    internal void Raw(uint signature, byte[] tag) => Check(LittleCms.WriteRawTag(profile, signature, tag, (uint)tag.Length));

    /// <summary>A second name for a tag.</summary>
    internal void Same(uint signature, uint as1) => Check(LittleCms.LinkTag(profile, signature, as1));

    /// <summary>Curves before, a table, curves after.</summary>
    internal void Table(uint signature, ushort[][] before, (int Steps, int Inputs, int Outputs) shape, ushort[] table, ushort[][] after)
    {
        nint pipeline = LittleCms.AllocPipeline(context.Handle, (uint)shape.Inputs, (uint)shape.Outputs);
        try
        {
            Curves(pipeline, before);
            nint grid = LittleCms.AllocTable(context.Handle, (uint)shape.Steps, (uint)shape.Inputs, (uint)shape.Outputs, table);
            Check(LittleCms.InsertStage(pipeline, 1, grid));
            Curves(pipeline, after);
            Check(LittleCms.WriteTag(profile, signature, pipeline));
        }
        finally
        {
            LittleCms.FreePipeline(pipeline);
        }
    }

    /// <summary>The bytes; those of edition 4 with their profile ID.</summary>
    internal byte[] Save() => ProfileBytes.Save(profile, context);

    /// <inheritdoc/>
    public void Dispose()
    {
        _ = LittleCms.CloseProfile(profile);
        context.Dispose();
    }

    private void Curves(nint pipeline, ushort[][] curves)
    {
        if (curves.Length == 0)
            return;
        nint[] built = [.. curves.Select(c => LittleCms.BuildCurve(context.Handle, (uint)c.Length, c))];
        Check(LittleCms.InsertStage(pipeline, 1, LittleCms.AllocCurves(context.Handle, (uint)built.Length, built)));
        foreach (nint curve in built)
            LittleCms.FreeCurve(curve);
    }

    private static byte[] AsciiZ(string text) => text.Length > 0 && text.All(char.IsAscii)
        ? [.. Encoding.ASCII.GetBytes(text), 0]
        : throw new ArgumentException(Invariant($"Profile text \"{text}\": wanted at least one character, all ASCII."), nameof(text));

    private void Check(int done)
    {
        if (done == 0)
            throw new InvalidOperationException(Invariant($"Little CMS refused a part of the profile: {context.Said}."));
    }
}
