using System.Buffers.Binary;
using System.Text;
using Laydown.Measures;

namespace Laydown.Formats.Icc;

/// <summary>An ICC profile, v2 or v4, opened once by Little CMS and found whole.</summary>
public sealed class IccProfile
{
    private const int HeaderBytes = 128;
    private const int MostBytes = 64 << 20;

    private static readonly Lazy<IccProfile> LazySrgb = new(() => BuiltIn(IccClass.Display, IccSpace.Rgb, LittleCms.CreateSrgb));
    private static readonly Lazy<IccProfile> LazyLab = new(() => BuiltIn(IccClass.Space, IccSpace.Lab, static c => LittleCms.CreateLab4(c, 0)));

    private IccProfile(byte[] bytes, IccClass kind, IccSpace space, IccSpace target, double version, string description)
    {
        Bytes = bytes;
        (Class, Space, Target, Version, Description) = (kind, space, target, version, description);
    }

    /// <summary>The profile as it stands in its file.</summary>
    public ReadOnlyMemory<byte> Bytes { get; }

    /// <summary>What it is for.</summary>
    public IccClass Class { get; }

    /// <summary>Space of the device side.</summary>
    public IccSpace Space { get; }

    /// <summary>Space of the other side: inks for a device link, Lab or Other (XYZ) for the rest.</summary>
    public IccSpace Target { get; }

    /// <summary>ICC version, such as 2.4 or 4.3.</summary>
    public double Version { get; }

    /// <summary>Its description in English; empty where it has none.</summary>
    public string Description { get; }

    /// <summary>sRGB, made by Little CMS: what RGB without a profile is taken for.</summary>
    /// <exception cref="DllNotFoundException">Little CMS is not installed.</exception>
    public static IccProfile Srgb => LazySrgb.Value;

    /// <summary>CIELAB under D50.</summary>
    /// <exception cref="DllNotFoundException">Little CMS is not installed.</exception>
    public static IccProfile Lab => LazyLab.Value;

    /// <summary>Takes a profile from a customer's file or from the shop's folder.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="bytes">The whole profile; at most 64 MiB.</param>
    /// <returns>The profile, or why it is refused: too short, cut short, no ICC signature, unreadable.</returns>
    public static Reading<IccProfile> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        InputFault? fault = HeaderFault(file, bytes.Span);
        if (fault is not null)
            return Reading.Refused<IccProfile>(fault);
        if (!LittleCms.IsPresent)
            return Reading.Refused<IccProfile>(new InputFault(file, null, "Little CMS", "no library liblcms2.so.2", "the package liblcms2-2"));

        byte[] kept = bytes.ToArray();
        using CmsContext context = new();
        nint handle = LittleCms.OpenProfile(context.Handle, kept, (uint)kept.Length);
        if (handle == 0)
            return Reading.Refused<IccProfile>(new InputFault(file, null, "ICC profile", context.Said, "a profile that Little CMS opens"));
        try
        {
            return Reading.Of(new IccProfile(
                kept, ClassOf(LittleCms.GetDeviceClass(handle)), SpaceOf(LittleCms.GetColorSpace(handle)), SpaceOf(LittleCms.GetPcs(handle)),
                Math.Round(LittleCms.GetProfileVersion(handle), 2), DescriptionOf(handle)));
        }
        finally
        {
            _ = LittleCms.CloseProfile(handle);
        }
    }

    /// <summary>The profile, when it is a CMYK output profile; else the fault.</summary>
    public static Reading<IccProfile> ReadCmykOutput(string file, ReadOnlyMemory<byte> bytes) => Read(file, bytes).Then(profile =>
        profile is { Class: IccClass.Output, Space: IccSpace.Cmyk }
            ? Reading.Of(profile)
            : Reading.Refused<IccProfile>(new InputFault(
                file, null, "ICC profile", Invariant($"class {profile.Class}, colour space {profile.Space}"), "an output profile for CMYK")));

    // A profile cut short still opens, so the length in its header is held against the bytes at hand.
    private static InputFault? HeaderFault(string file, ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length is <= HeaderBytes or > MostBytes)
            return new(file, null, "ICC profile", Invariant($"{bytes.Length} bytes"), Invariant($"{HeaderBytes + 1} to {MostBytes} bytes"));
        if (!bytes.Slice(36, 4).SequenceEqual("acsp"u8))
            return new(file, null, "ICC profile file signature", "other bytes", "acsp at byte 36");

        uint stated = BinaryPrimitives.ReadUInt32BigEndian(bytes);
        return stated == bytes.Length
            ? null
            : new(file, null, "ICC profile size", Invariant($"{stated} bytes in the header, {bytes.Length} bytes at hand"), "the same number");
    }

    private static IccProfile BuiltIn(IccClass kind, IccSpace space, Func<nint, nint> create)
    {
        using CmsContext context = new();
        nint handle = create(context.Handle);
        try
        {
            return new(
                ProfileBytes.Save(handle, context), kind, space, SpaceOf(LittleCms.GetPcs(handle)),
                Math.Round(LittleCms.GetProfileVersion(handle), 2), DescriptionOf(handle));
        }
        finally
        {
            _ = LittleCms.CloseProfile(handle);
        }
    }

    private static unsafe string DescriptionOf(nint profile)
    {
        // Little CMS hands out wchar_t, which is 32 bits wide on this system, ended by 0.
        fixed (byte* language = "en\0"u8, country = "GB\0"u8)
        {
            uint size = Math.Min(LittleCms.GetProfileInfo(profile, LittleCms.InfoDescription, language, country, null, 0), 4096);
            if (size < 8)
                return "";
            uint[] text = new uint[size / 4];
            fixed (uint* buffer = text)
                _ = LittleCms.GetProfileInfo(profile, LittleCms.InfoDescription, language, country, buffer, (uint)text.Length * 4);
            StringBuilder description = new();
            foreach (uint c in text.TakeWhile(c => c != 0).Where(Rune.IsValid))
                description.Append(new Rune(c).ToString());
            return description.ToString().Trim();
        }
    }

    private static IccClass ClassOf(uint signature) => signature switch
    {
        0x73636E72 => IccClass.Input,
        0x6D6E7472 => IccClass.Display,
        0x70727472 => IccClass.Output,
        0x73706163 => IccClass.Space,
        ProfileWriter.LinkClass => IccClass.Link,
        _ => IccClass.Other,
    };

    private static IccSpace SpaceOf(uint signature) => signature switch
    {
        0x47524159 => IccSpace.Gray,
        0x52474220 => IccSpace.Rgb,
        0x434D594B => IccSpace.Cmyk,
        0x4C616220 => IccSpace.Lab,
        0x33434C52 => IccSpace.Ink3,
        0x34434C52 => IccSpace.Ink4,
        0x35434C52 => IccSpace.Ink5,
        0x36434C52 => IccSpace.Ink6,
        0x37434C52 => IccSpace.Ink7,
        0x38434C52 => IccSpace.Ink8,
        _ => IccSpace.Other,
    };
}
