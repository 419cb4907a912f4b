using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Shop.Layers;
using Microsoft.Win32.SafeHandles;

namespace Laydown.Shop.Proof;

/// <summary>Tells what is at one pixel of a look: inks, spectra, colours by day and by night, and how near they come to the wish.</summary>
/// <param name="lights">From a look to the model of light.</param>
public sealed class PickPoint(LookLights lights)
{
    /// <summary>The pixel at level 0.</summary>
    /// <param name="look">The look.</param>
    /// <param name="xPx">From the left, 0 to the width − 1.</param>
    /// <param name="yPx">From the top, 0 to the height − 1.</param>
    /// <returns>What is there, or why it cannot be told.</returns>
    public Reading<PointTold> At(StoredLook look, int xPx, int yPx)
    {
        LookRecord record = look.Record;
        if (xPx < 0 || yPx < 0 || xPx >= record.WidthPx || yPx >= record.HeightPx)
        {
            return Reading.Refused<PointTold>(new InputFault(
                Invariant($"look {record.LookId}"), null, "point", Invariant($"{xPx}, {yPx}"), Invariant($"0, 0 to {record.WidthPx - 1}, {record.HeightPx - 1}")));
        }

        return lights.Of(record).Then(optics => Reading.Of(Told(look, optics, xPx, yPx)));
    }

    private static PointTold Told(StoredLook look, LookOptics optics, int x, int y)
    {
        LookRecord record = look.Record;
        byte[] codes = Read(Path.Combine(look.Folder, LookRecord.PlanesFile), record, record.PlaneCount, x, y);
        double[] coverages = [.. codes.Select(c => c / 255.0)];
        double[] r = new double[Bands.Count], t = new double[Bands.Count];
        optics.Bands().Solve(coverages, r, t);

        // Six bytes of the wish: L*, a*, b* by day, then at night.
        string wishPath = Path.Combine(look.Folder, LookRecord.WishFile);
        byte[]? wish = File.Exists(wishPath) ? Read(wishPath, record, 6, x, y) : null;
        double mm = 25.4 / record.Ppi;
        return new(
            x, y, ((x + 0.5) * mm) - record.BleedMm, ((y + 0.5) * mm) - record.BleedMm, Bands.FirstNm, Bands.StepNm, r, t,
            Seen(optics.Day().At(coverages), wish?[..3], record.Aim?.DayWhite), Seen(optics.Night().At(coverages), wish?[3..], record.Aim?.NightWhite),
            Layers(record, codes));
    }

    // A wish is measured against the white that was declared with it, so what is seen is told against the same one.
    private static PointLook Seen(SeenColour seen, byte[]? wish, Xyz? white)
    {
        Lab lab = white is { } declared ? Lab.From(seen.CdPerM2, declared) : seen.Lab;
        Lab? aim = wish is null ? null : new Lab(wish[0] / 2.55, wish[1] - 128, wish[2] - 128);
        return new(lab, seen.CdPerM2.Y, aim, aim is { } wished ? Ciede2000.Between(wished, lab) : null, seen.Red, seen.Green, seen.Blue);
    }

    private static List<PointLayer> Layers(LookRecord record, byte[] codes)
    {
        List<PointLayer> layers = [];
        int plane = 0;
        foreach (LookedLayer layer in record.Layers)
        {
            layers.Add(new(layers.Count + 1, layer.Face, layer.Group, [.. layer.Inks.Select((ink, i) => new PointInk(ink.Role, ink.Name, codes[plane + i] / 2.55))]));
            plane += layer.Inks.Count;
        }

        return layers;
    }

    private static byte[] Read(string path, LookRecord record, int planes, int x, int y)
    {
        byte[] codes = new byte[planes];
        using SafeFileHandle file = File.OpenHandle(path);
        for (int plane = 0; plane < planes; plane++)
        {
            if (RandomAccess.Read(file, codes.AsSpan(plane, 1), ((((long)plane * record.HeightPx) + y) * record.WidthPx) + x) != 1)
                throw new InvalidDataException(Invariant($"{Path.GetFileName(path)}: shorter than {planes} × {record.HeightPx} × {record.WidthPx} bytes."));
        }

        return codes;
    }
}
