using System.Runtime.InteropServices;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Formats.Icc;

/// <summary>Turns pixels from one profile's space into another's by Little CMS.</summary>
/// <remarks>
/// Pixels are 8 bits a channel, channels interleaved; Lab pixels are <see cref="Lab"/> values. One transform may serve several threads
/// at once.
/// Typical use: <c>IccTransform.Between(IccProfile.Srgb, printer, IccIntent.Perceptual, true)</c>, then
/// <see cref="Row(ReadOnlySpan{byte}, Span{byte})"/>.
/// </remarks>
public sealed class IccTransform : IDisposable
{
    private readonly CmsContext context;
    private nint handle;

    private IccTransform(CmsContext context, nint handle, IccSpace from, IccSpace to)
    {
        (this.context, this.handle, From, To) = (context, handle, from, to);
    }

    /// <summary>Space of the pixels that go in.</summary>
    public IccSpace From { get; }

    /// <summary>Space of the pixels that come out.</summary>
    public IccSpace To { get; }

    /// <summary>A transform between two profiles.</summary>
    /// <param name="from">Profile of the pixels at hand.</param>
    /// <param name="to">Profile of the pixels wanted.</param>
    /// <param name="intent">Rendering intent.</param>
    /// <param name="blackPoint">Whether the darkest colour goes to the darkest (black point compensation).</param>
    /// <returns>The transform, or why there is none: a profile of a class or space that cannot stand here, or without the tables asked
    /// for.</returns>
    public static Reading<IccTransform> Between(IccProfile from, IccProfile to, IccIntent intent, bool blackPoint)
    {
        InputFault[] faults = [.. new[] { from, to }.Where(p => p.Space == IccSpace.Other || p.Class == IccClass.Other).Select(p => new InputFault(
            NameOf(p), null, "ICC profile", Invariant($"class {p.Class}, colour space {p.Space}"),
            "an input, display, output or space profile for Gray, RGB, CMYK or Lab"))];
        if (faults.Length > 0)
            return Reading.Refused<IccTransform>(faults);

        CmsContext context = new();
        nint transform = Create(context, from, to, intent, blackPoint);
        if (transform != 0)
            return Reading.Of(new IccTransform(context, transform, from.Space, to.Space));

        string said = context.Said;
        context.Dispose();
        return Reading.Refused<IccTransform>(new InputFault(
            Invariant($"{NameOf(from)} → {NameOf(to)}"), null, "ICC transform", said, Invariant($"profiles with tables for {intent}")));
    }

    /// <summary>Converts a row of 8-bit pixels.</summary>
    /// <exception cref="ArgumentException">The spans do not hold the same number of whole pixels, or a side is Lab.</exception>
    public void Row(ReadOnlySpan<byte> source, Span<byte> target)
    {
        RequireBytes(From, nameof(source));
        RequireBytes(To, nameof(target));
        Run(source, Channels(From), target, Channels(To));
    }

    /// <summary>Converts Lab colours (D50) to a row of 8-bit pixels.</summary>
    /// <exception cref="ArgumentException">The source is not Lab, the target is, or the lengths differ.</exception>
    public void Row(ReadOnlySpan<Lab> source, Span<byte> target)
    {
        RequireLab(From, nameof(source));
        RequireBytes(To, nameof(target));
        Run(MemoryMarshal.AsBytes(source), LabBytes, target, Channels(To));
    }

    /// <summary>Converts a row of 8-bit pixels to Lab colours (D50).</summary>
    /// <exception cref="ArgumentException">The target is not Lab, the source is, or the lengths differ.</exception>
    public void Row(ReadOnlySpan<byte> source, Span<Lab> target)
    {
        RequireBytes(From, nameof(source));
        RequireLab(To, nameof(target));
        Run(source, Channels(From), MemoryMarshal.AsBytes(target), LabBytes);
    }

    /// <summary>Frees the transform. No row may be under way.</summary>
    public void Dispose()
    {
        if (handle == 0)
            return;
        LittleCms.DeleteTransform(handle);
        handle = 0;
        context.Dispose();
    }

    /// <summary>Bytes of one 8-bit pixel of a space.</summary>
    public static int Channels(IccSpace space) => space switch
    {
        IccSpace.Gray => 1,
        IccSpace.Rgb or IccSpace.Lab => 3,
        IccSpace.Cmyk => 4,
        _ => throw new ArgumentOutOfRangeException(nameof(space), space, "Colour space: wanted Gray, Rgb, Cmyk or Lab."),
    };

    private const int LabBytes = 3 * sizeof(double);

    private void Run(ReadOnlySpan<byte> source, int sourceBytes, Span<byte> target, int targetBytes)
    {
        ObjectDisposedException.ThrowIf(handle == 0, this);
        int pixels = source.Length / sourceBytes;
        if (source.Length % sourceBytes != 0 || target.Length != pixels * targetBytes)
            throw new ArgumentException(Invariant($"{source.Length} bytes in, {target.Length} bytes out: wanted whole pixels, as many out as in."), nameof(target));
        if (pixels > 0)
            LittleCms.DoTransform(handle, source, target, (uint)pixels);
    }

    private static nint Create(CmsContext context, IccProfile from, IccProfile to, IccIntent intent, bool blackPoint)
    {
        nint input = LittleCms.OpenProfile(context.Handle, from.Bytes.Span, (uint)from.Bytes.Length);
        nint output = LittleCms.OpenProfile(context.Handle, to.Bytes.Span, (uint)to.Bytes.Length);
        try
        {
            uint flags = LittleCms.NoCache | LittleCms.FineTable | (blackPoint ? LittleCms.BlackPointCompensation : 0);
            return input == 0 || output == 0
                ? 0
                : LittleCms.CreateTransform(context.Handle, input, Format(from.Space), output, Format(to.Space), (uint)intent, flags);
        }
        finally
        {
            if (input != 0)
                _ = LittleCms.CloseProfile(input);
            if (output != 0)
                _ = LittleCms.CloseProfile(output);
        }
    }

    // Bits of a pixel format: float 22, colour space 16–20, channels 3–6, bytes a channel 0–2 (0 stands for the 8 of a double).
    private static uint Format(IccSpace space) => space switch
    {
        IccSpace.Gray => (3u << 16) | (1 << 3) | 1,
        IccSpace.Rgb => (4u << 16) | (3 << 3) | 1,
        IccSpace.Cmyk => (6u << 16) | (4 << 3) | 1,
        _ => (1u << 22) | (10u << 16) | (3 << 3),
    };

    private static string NameOf(IccProfile profile) => profile.Description.Length > 0 ? profile.Description : "unnamed profile";

    private static void RequireLab(IccSpace space, string name)
    {
        if (space != IccSpace.Lab)
            throw new ArgumentException(Invariant($"The transform has {space} here, not Lab."), name);
    }

    private static void RequireBytes(IccSpace space, string name)
    {
        if (space == IccSpace.Lab)
            throw new ArgumentException("The transform has Lab here: pass Lab values.", name);
    }
}
