using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Marks;

/// <summary>Discs for a camera about all pieces of a sheet, and crosses that both faces carry.</summary>
internal static class DiscMarks
{
    /// <summary>Bare ground about a disc or cross, mm: own choice.</summary>
    internal const double GroundMm = 2;

    /// <summary>Adds discs at the corners of a frame about the pieces and between, no further apart than wanted, and one beside the first that tells which way round the sheet lies.</summary>
    internal static void Add(SheetLayout sheet, MarkWish wish, FreeRoom room)
    {
        RectMm frame = Frame(sheet, wish.DiscClearMm + (wish.DiscMm / 2));
        int across = Parts(frame.WidthMm, wish.DiscPitchMm), up = Parts(frame.HeightMm, wish.DiscPitchMm);
        List<PointMm> places = [];
        for (int i = 0; i <= across; i++)
        {
            places.Add(new(frame.XMm + (frame.WidthMm * i / across), frame.YMm));
            places.Add(new(frame.XMm + (frame.WidthMm * i / across), frame.TopMm));
        }

        for (int i = 1; i < up; i++)
        {
            places.Add(new(frame.XMm, frame.YMm + (frame.HeightMm * i / up)));
            places.Add(new(frame.RightMm, frame.YMm + (frame.HeightMm * i / up)));
        }

        places.Add(new(frame.XMm + (4 * wish.DiscMm), frame.YMm));
        int missed = places.Count(p => !room.TryAdd(Round(MarkKind.Disc, p, wish.DiscMm)));
        if (missed > 0)
            room.Miss(Invariant($"{missed} of {places.Count} discs for the camera"));
    }

    /// <summary>Adds four crosses, one in the middle of each side.</summary>
    internal static void AddCrosses(SheetLayout sheet, MarkWish wish, FreeRoom room)
    {
        const double ring = 8;
        RectMm frame = Frame(sheet, Math.Max(2, wish.DiscClearMm / 2) + (ring / 2));
        double x = frame.XMm + (frame.WidthMm / 2), y = frame.YMm + (frame.HeightMm / 2);
        PointMm[] places = [new(x, frame.YMm), new(x, frame.TopMm), new(frame.XMm, y), new(frame.RightMm, y)];
        int missed = places.Count(p => !room.TryAdd(Round(MarkKind.FaceCross, p, ring)));
        if (missed > 0)
            room.Miss(Invariant($"{missed} of 4 crosses that both faces carry"));
    }

    private static RectMm Frame(SheetLayout sheet, double off)
    {
        double left = sheet.Placements.Min(p => p.Place.XMm), low = sheet.Placements.Min(p => p.Place.YMm);
        return new RectMm(left, low, sheet.Placements.Max(p => p.Place.RightMm) - left, sheet.Placements.Max(p => p.Place.TopMm) - low).Grown(off);
    }

    private static int Parts(double length, double pitch) => Math.Max(1, (int)Math.Ceiling(length / pitch));

    private static SheetMark Round(MarkKind kind, PointMm at, double diameter)
    {
        double half = (diameter / 2) + GroundMm;
        return new(kind, "", 0, new(at.XMm - half, at.YMm - half, 2 * half, 2 * half), diameter, false, "");
    }
}
