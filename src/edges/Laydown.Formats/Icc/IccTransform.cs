using System.Runtime.InteropServices;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Formats.Icc;

/// <summary>Turns pixels from one profile's space into another's by Little CMS.</summary>
/// <remarks>
/// Pixels are 8 bits a channel unless it is said otherwise, channels interleaved; Lab pixels are <see cref="Lab"/> values. One transform may serve several threads
/// at once.
/// Typical use: <c>IccTransform.Between(IccProfile.Srgb, printer, IccIntent.Perceptual, true)</c>, then
/// <see cref="Row(ReadOnlySpan{byte}, Span{byte})"/>.
/// </remarks>
public sealed class IccTransform : IDisposable
{
    private readonly CmsContext context;
    private readonly Depth depth;
    private nint handle;

    private IccTransform(CmsContext context, nint handle, IccSpace from, IccSpace to, Depth depth)
    {
        (this.context, this.handle, From, To, this.depth) = (context, handle, from, to, depth);
    }

    private enum Depth
    {
        Bytes,
        Codes,
        Doubles,
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
    public static Reading<IccTransform> Between(IccProfile from, IccProfile to, IccIntent intent, bool blackPoint) =>
        Between(from, to, intent, blackPoint, Depth.Bytes, null);

    /// <summary>A transform for rows of doubles: inks and light 0 to 1, Lab as it is; nothing is rounded to 8 bits.</summary>
    /// <inheritdoc cref="Between(IccProfile, IccProfile, IccIntent, bool)"/>
    public static Reading<IccTransform> Precise(IccProfile from, IccProfile to, IccIntent intent, bool blackPoint) =>
        Between(from, to, intent, blackPoint, Depth.Doubles, null);

    /// <summary>A transform for rows of codes of 16 bits: inks and light 0 to 65535, no Lab.</summary>
    /// <param name="from">Profile of the pixels at hand.</param>
    /// <param name="to">Profile of the pixels wanted; null where the first is a device link, which holds both ends.</param>
    /// <param name="intent">Rendering intent.</param>
    /// <param name="blackPoint">Whether the darkest colour goes to the darkest (black point compensation).</param>
    /// <param name="nodes">Nodes along each channel of the table that Little CMS makes of it all, 2 to 255; null to run every step for every pixel.</param>
    /// <returns>The transform, or why there is none.</returns>
    public static Reading<IccTransform> Codes(IccProfile from, IccProfile? to, IccIntent intent, bool blackPoint, int? nodes)
    {
        if (nodes is { } steps)
            Bounds.Within(steps, 2, 255);
        return to is null ? Through(from, Depth.Codes, nodes) : Between(from, to, intent, blackPoint, Depth.Codes, nodes);
    }

    /// <summary>A transform by a device link.</summary>
    /// <param name="link">The link; it holds both ends.</param>
    /// <param name="precise">Rows of doubles (0 to 1) instead of bytes.</param>
    /// <returns>The transform, or why there is none.</returns>
    public static Reading<IccTransform> Through(IccProfile link, bool precise) => Through(link, precise ? Depth.Doubles : Depth.Bytes, null);

    private static Reading<IccTransform> Through(IccProfile link, Depth depth, int? nodes)
    {
        if (link.Class != IccClass.Link || link.Space == IccSpace.Other || link.Target == IccSpace.Other)
            return Reading.Refused<IccTransform>(new InputFault(
                NameOf(link), null, "ICC profile", Invariant($"class {link.Class}, {link.Space} to {link.Target}"), "a device link between RGB, CMYK or inks"));
        return Made(link, null, (link.Space, link.Target), IccIntent.Perceptual, false, depth, nodes);
    }

    private static Reading<IccTransform> Between(IccProfile from, IccProfile to, IccIntent intent, bool blackPoint, Depth depth, int? nodes)
    {
        InputFault[] faults = [.. new[] { from, to }
            .Where(p => p.Space == IccSpace.Other || p.Class is IccClass.Other or IccClass.Link).Select(p => new InputFault(
                NameOf(p), null, "ICC profile", Invariant($"class {p.Class}, colour space {p.Space}"),
                "an input, display, output or space profile for Gray, RGB, CMYK, Lab or 3 to 8 inks"))];
        return faults.Length > 0
            ? Reading.Refused<IccTransform>(faults)
            : Made(from, to, (from.Space, to.Space), intent, blackPoint, depth, nodes);
    }

    private static Reading<IccTransform> Made(
        IccProfile from, IccProfile? to, (IccSpace From, IccSpace To) ends, IccIntent intent, bool blackPoint, Depth depth, int? nodes)
    {
        CmsContext context = new();
        nint transform = Create(context, from, to, ends, intent, blackPoint, depth, nodes);
        if (transform != 0)
            return Reading.Of(new IccTransform(context, transform, ends.From, ends.To, depth));

        string said = context.Said;
        context.Dispose();
        return Reading.Refused<IccTransform>(new InputFault(
            Invariant($"{NameOf(from)} → {(to is null ? "inks" : NameOf(to))}"), null, "ICC transform", said, Invariant($"profiles with tables for {intent}")));
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

    /// <summary>Converts a row of codes of 16 bits, for a transform made by <see cref="Codes"/>.</summary>
    /// <exception cref="ArgumentException">The lengths differ, or the transform is of another kind.</exception>
    public void Row(ReadOnlySpan<ushort> source, Span<ushort> target)
    {
        if (depth != Depth.Codes)
            throw new ArgumentException("The transform is not one for codes of 16 bits; make it by Codes.", nameof(source));
        Run(MemoryMarshal.AsBytes(source), 2 * Channels(From), MemoryMarshal.AsBytes(target), 2 * Channels(To));
    }

    /// <summary>Converts a row of doubles, for a precise transform: inks and light 0 to 1, Lab as it is.</summary>
    /// <exception cref="ArgumentException">The lengths differ, or the transform is one for bytes.</exception>
    public void Row(ReadOnlySpan<double> source, Span<double> target)
    {
        if (depth != Depth.Doubles)
            throw new ArgumentException("The transform is not one for doubles; make it by Precise.", nameof(source));
        double into = Scale(From), outOf = Scale(To);
        double[] scaled = new double[source.Length];
        for (int i = 0; i < scaled.Length; i++)
            scaled[i] = source[i] * into;
        Run(MemoryMarshal.AsBytes<double>(scaled), 8 * Channels(From), MemoryMarshal.AsBytes(target), 8 * Channels(To));
        for (int i = 0; i < target.Length; i++)
            target[i] /= outOf;
    }

    // Little CMS counts inks in percent as doubles, save where it takes a space of three or four colours for no inks.
    private static double Scale(IccSpace space) => space is IccSpace.Cmyk or >= IccSpace.Ink5 and <= IccSpace.Ink8 ? 100 : 1;

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
        >= IccSpace.Ink3 and <= IccSpace.Ink8 => 3 + (space - IccSpace.Ink3),
        _ => throw new ArgumentOutOfRangeException(nameof(space), space, "Colour space: wanted Gray, Rgb, Cmyk, Lab or 3 to 8 inks."),
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

    private static nint Create(
        CmsContext context, IccProfile from, IccProfile? to, (IccSpace From, IccSpace To) ends, IccIntent intent, bool blackPoint, Depth depth, int? nodes)
    {
        nint input = LittleCms.OpenProfile(context.Handle, from.Bytes.Span, (uint)from.Bytes.Length);
        nint output = to is null ? 0 : LittleCms.OpenProfile(context.Handle, to.Bytes.Span, (uint)to.Bytes.Length);
        try
        {
            // A table of five or more inks would be thinned to seven nodes by the library's own table: take the profile as it is.
            bool plain = depth switch { Depth.Doubles => true, Depth.Codes => nodes is null, _ => Channels(ends.From) > 4 };
            uint table = nodes is { } steps ? (uint)steps << 16 : LittleCms.FineTable;
            uint flags = LittleCms.NoCache | (plain ? LittleCms.NoOptimization : table)
                | (blackPoint ? LittleCms.BlackPointCompensation : 0);
            return input == 0 || (output == 0 && to is not null)
                ? 0
                : LittleCms.CreateTransform(
                    context.Handle, input, Format(ends.From, depth), output, Format(ends.To, depth), (uint)intent, flags);
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
    private static uint Format(IccSpace space, Depth depth)
    {
        uint number = space switch
        {
            IccSpace.Gray => 3,
            IccSpace.Rgb => 4,
            IccSpace.Cmyk => 6,
            IccSpace.Lab => 10,
            _ => 14 + (uint)Channels(space),
        };
        return (number << 16) | ((uint)Channels(space) << 3) | (space == IccSpace.Lab ? 1u << 22 : depth switch { Depth.Doubles => 1u << 22, Depth.Codes => 2u, _ => 1u });
    }

    private static string NameOf(IccProfile profile) => profile.Description.Length > 0 ? profile.Description : "unnamed profile";

    private void RequireLab(IccSpace space, string name)
    {
        RequireCoarse(name);
        if (space != IccSpace.Lab)
            throw new ArgumentException(Invariant($"The transform has {space} here, not Lab."), name);
    }

    private void RequireCoarse(string name)
    {
        if (depth != Depth.Bytes)
            throw new ArgumentException("The transform is one for doubles or codes of 16 bits: pass these.", name);
    }

    private void RequireBytes(IccSpace space, string name)
    {
        RequireCoarse(name);
        if (space == IccSpace.Lab)
            throw new ArgumentException("The transform has Lab here: pass Lab values.", name);
    }
}
