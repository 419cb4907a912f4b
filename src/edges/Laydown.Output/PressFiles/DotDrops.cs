using Laydown.Measures;
using Laydown.Press.Machines;
using Laydown.Raster.Screens;

namespace Laydown.Output.PressFiles;

/// <summary>Drops that dots stand for.</summary>
/// <param name="Levels">Codes and shares.</param>
/// <param name="VolumesPl">Volume of each code, pl; 0 for bare.</param>
internal sealed record DotDrops(DropLevels Levels, IReadOnlyList<double> VolumesPl)
{
    /// <summary>Drops of a mode.</summary>
    /// <param name="mode">The mode.</param>
    /// <param name="bits">1 for its largest drop alone, 2 for all, null for what it has.</param>
    public static Reading<DotDrops> Of(Mode mode, int? bits)
    {
        if (mode.DropsPl.Count is < 1 or > 3)
            return Refused(mode, Invariant($"{mode.DropsPl.Count} drops"), "one to three drops, which two bits can tell apart");
        if (bits is not (null or 1 or 2))
            return Refused(mode, Invariant($"{bits} bits"), "1 or 2 bits of a dot");
        if (bits == 2 && mode.DropsPl.Count == 1)
            return Refused(mode, "one drop for 2 bits", "a mode with two or three drops, or 1 bit");
        IReadOnlyList<double> drops = bits == 1 ? [mode.DropsPl[^1]] : mode.DropsPl;
        return Reading.Of(new DotDrops(new(drops), [0, .. drops]));
    }

    /// <summary>Ink of counted dots, ml.</summary>
    /// <param name="counts">Dots by code, bare first.</param>
    public double Ml(ReadOnlySpan<long> counts)
    {
        double picolitres = 0;
        for (int code = 1; code < VolumesPl.Count; code++)
            picolitres += counts[code] * VolumesPl[code];
        return picolitres * 1e-9;
    }

    private static Reading<DotDrops> Refused(Mode mode, string found, string wanted) =>
        Reading.Refused<DotDrops>(new InputFault(Invariant($"mode {mode.Id}"), null, "dropsPl", found, wanted));
}
