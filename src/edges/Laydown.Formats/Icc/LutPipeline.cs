namespace Laydown.Formats.Icc;

/// <summary>The stages of a lut8, lut16, mAB or mBA tag, run one after the other. [ICC1]</summary>
internal sealed class LutPipeline
{
    private readonly List<Func<double[], double[]>> stages = [];
    private int gridAt;

    private LutPipeline(string type) => Type = type;

    /// <summary>Type signature of the tag; tells how Lab is coded.</summary>
    internal string Type { get; }

    /// <summary>Curves before the table; null where there are none.</summary>
    internal CurveStage[]? Before { get; private set; }

    /// <summary>The table; null where there is none.</summary>
    internal GridStage? Grid { get; private set; }

    /// <summary>Whether only curves stand after the table.</summary>
    internal bool EndsPlain { get; private set; } = true;

    internal double[] Run(double[] channels)
    {
        foreach (Func<double[], double[]> stage in stages)
            channels = stage(channels);
        return channels;
    }

    /// <summary>The table and what stands after it.</summary>
    internal double[] FromGrid(double[] channels)
    {
        foreach (Func<double[], double[]> stage in stages.Skip(gridAt))
            channels = stage(channels);
        return channels;
    }

    /// <summary>Reads a tag with so many channels on each side.</summary>
    /// <exception cref="TagFaultException">Other type, other channels, anything outside the tag.</exception>
    internal static LutPipeline Read(TagTable tags, string tag, int inputs, int outputs, bool fromXyz)
    {
        ReadOnlyMemory<byte> bytes = tags.Tag(tag);
        string type = TagTable.Ascii(bytes.Span[..4]);
        if (bytes.Length < 32 || type is not ("mft1" or "mft2" or "mAB " or "mBA "))
            throw new TagFaultException(tag, Invariant($"type {type}, {bytes.Length} bytes"), "lut8, lut16, lutAToB or lutBToA");
        if (bytes.Span[8] != inputs || bytes.Span[9] != outputs)
            throw new TagFaultException(tag, Invariant($"{bytes.Span[8]} channels to {bytes.Span[9]}"), Invariant($"{inputs} to {outputs}"));
        LutPipeline made = new(type);
        if (type is "mft1" or "mft2")
            made.ReadOld(tag, bytes, inputs, outputs, fromXyz);
        else
            made.ReadNew(tag, bytes, inputs, outputs, type == "mAB ");
        return made;
    }

    private void ReadOld(string tag, ReadOnlyMemory<byte> bytes, int inputs, int outputs, bool fromXyz)
    {
        int width = Type == "mft1" ? 1 : 2, at = width == 1 ? 48 : 52;
        if (bytes.Length < at)
            throw new TagFaultException(tag, Invariant($"{bytes.Length} bytes"), Invariant($"at least {at}"));
        if (fromXyz)
            AddMatrix(bytes.Span[12..48], 0);
        int before = width == 1 ? 256 : TagTable.U16(bytes.Span[48..]), after = width == 1 ? 256 : TagTable.U16(bytes.Span[50..]);
        Before = OldCurves(tag, bytes, ref at, inputs, before, width);
        AddCurves(Before);
        AddGrid(new(tag, bytes[at..], [.. Enumerable.Repeat((int)bytes.Span[10], inputs)], outputs, width));
        at += Grid!.Length;
        AddCurves(OldCurves(tag, bytes, ref at, outputs, after, width));
    }

    private static CurveStage[] OldCurves(string tag, ReadOnlyMemory<byte> bytes, ref int at, int channels, int entries, int width)
    {
        if (entries < 2 || at + ((long)entries * channels * width) > bytes.Length)
            throw new TagFaultException(tag, Invariant($"curves of {entries} entries in {bytes.Length} bytes"), "at least 2 entries, all in the tag");
        CurveStage[] curves = new CurveStage[channels];
        for (int c = 0; c < channels; c++)
        {
            double[] samples = new double[entries];
            for (int i = 0; i < entries; i++, at += width)
                samples[i] = width == 1 ? bytes.Span[at] / 255.0 : TagTable.U16(bytes.Span[at..]) / 65535.0;
            curves[c] = CurveStage.Sampled(samples);
        }

        return curves;
    }

    private void ReadNew(string tag, ReadOnlyMemory<byte> bytes, int inputs, int outputs, bool toPcs)
    {
        uint b = TagTable.U32(bytes.Span[12..]), matrix = TagTable.U32(bytes.Span[16..]), m = TagTable.U32(bytes.Span[20..]),
            clut = TagTable.U32(bytes.Span[24..]), a = TagTable.U32(bytes.Span[28..]);
        if (b == 0 || (clut == 0 && inputs != outputs) || (clut != 0 && a == 0))
            throw new TagFaultException(tag, "curves or table missing", "B curves; a table with A curves where the channels differ");
        int side = toPcs ? outputs : inputs, device = toPcs ? inputs : outputs;
        if ((matrix != 0 || m != 0) && side != 3)
            throw new TagFaultException(tag, Invariant($"a matrix of {side} channels"), "3 channels");

        EndsPlain = matrix == 0 && m == 0;
        Action[] steps =
        [
            () => AddCurves(a == 0 ? null : Before = NewCurves(tag, bytes, a, device), clut != 0 || a != 0),
            () => AddClut(tag, bytes, clut, inputs, outputs),
            () => AddCurves(m == 0 ? null : NewCurves(tag, bytes, m, 3), m != 0),
            () => AddMatrix(matrix == 0 ? [] : Part(tag, bytes, matrix, 48).Span, 12),
            () => AddCurves(NewCurves(tag, bytes, b, side)),
        ];
        foreach (Action step in toPcs ? steps : steps.Reverse())
            step();
    }

    private void AddClut(string tag, ReadOnlyMemory<byte> bytes, uint offset, int inputs, int outputs)
    {
        if (offset == 0)
            return;
        ReadOnlyMemory<byte> part = Part(tag, bytes, offset, 20);
        AddGrid(new(tag, part[20..], [.. part.Span[..inputs].ToArray().Select(n => (int)n)], outputs, part.Span[16]));
    }

    private static CurveStage[] NewCurves(string tag, ReadOnlyMemory<byte> bytes, uint offset, int channels)
    {
        CurveStage[] curves = new CurveStage[channels];
        for (int c = 0; c < channels; c++)
        {
            curves[c] = CurveStage.Read(tag, Part(tag, bytes, offset, 12).Span, out int length);
            offset += (uint)((length + 3) & ~3);
        }

        return curves;
    }

    private static ReadOnlyMemory<byte> Part(string tag, ReadOnlyMemory<byte> bytes, uint offset, int least) =>
        offset >= 32 && (long)offset + least <= bytes.Length
            ? bytes[(int)offset..]
            : throw new TagFaultException(tag, Invariant($"a part at {offset} of {bytes.Length} bytes"), Invariant($"{least} bytes within the tag"));

    private void AddCurves(CurveStage[]? curves, bool wanted = true)
    {
        if (curves is not null && wanted)
            stages.Add(v => [.. v.Select((x, i) => curves[i].At(x))]);
    }

    private void AddGrid(GridStage grid)
    {
        Grid = grid;
        gridAt = stages.Count;
        stages.Add(v => grid.At(v));
    }

    // Nine numbers row by row, then the offsets where there are any.
    private void AddMatrix(ReadOnlySpan<byte> bytes, int wanted)
    {
        if (bytes.Length == 0)
            return;
        double[] e = new double[12];
        for (int i = 0; i < (wanted == 12 ? 12 : 9); i++)
            e[i] = TagTable.Fixed(bytes[(4 * i)..]);
        stages.Add(v => [.. Enumerable.Range(0, 3).Select(r => (e[3 * r] * v[0]) + (e[(3 * r) + 1] * v[1]) + (e[(3 * r) + 2] * v[2]) + e[9 + r])]);
    }
}
