using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Looks;
using Laydown.Shop.Layers;

namespace Laydown.Shop.Proof;

/// <summary>A look as a screen needs it to blend room and lamp: sizes, lights and what the tiles are measured in.</summary>
/// <param name="WidthPx">Pixels across at level 0.</param>
/// <param name="HeightPx">Pixels down.</param>
/// <param name="Levels">Number of levels.</param>
/// <param name="MmPerPx">Millimetres of a pixel at level 0.</param>
/// <param name="BleedMm">Bleed around the finished piece, within the picture, mm.</param>
/// <param name="FinishedMm">Size of the finished piece, mm.</param>
/// <param name="DayLux">Room light by day, lux.</param>
/// <param name="NightLux">Room light with the lamp on, lux.</param>
/// <param name="LampCdPerM2">The lamp, cd/m².</param>
/// <param name="Room">Name of the room's light.</param>
/// <param name="Lamp">Name of the lamp's light.</param>
/// <param name="RoomMost">Value of code 1023 of the room's channels, a perfect diffuser in the room being 1.</param>
/// <param name="LampMost">Value of code 1023 of the lamp's channels, the bare lamp having luminance 1.</param>
/// <param name="UncolouredByRoom">The piece without colour, its white at full, by a room of one: linear red, green, blue.</param>
/// <param name="UncolouredByLamp">The same by a lamp of one.</param>
/// <param name="RoomToLuminance">Weights of linear red, green, blue that give true luminance: the carrying over to the screen's white moves it.</param>
/// <param name="Mark">Short hash of planes and lights: addresses with it may be kept for good.</param>
public sealed record LightTable(
    int WidthPx,
    int HeightPx,
    int Levels,
    double MmPerPx,
    double BleedMm,
    SizeMm FinishedMm,
    double DayLux,
    double NightLux,
    double LampCdPerM2,
    string Room,
    string Lamp,
    double RoomMost,
    double LampMost,
    IReadOnlyList<double> UncolouredByRoom,
    IReadOnlyList<double> UncolouredByLamp,
    IReadOnlyList<double> RoomToLuminance,
    string Mark)
{
    /// <summary>Largest lamp light through a piece of which no tile is clipped.</summary>
    private const double LeastMost = 0.02;

    internal static (LightTable Table, StackLight Light) Of(LookRecord record, LookOptics optics)
    {
        // With the lamp off the night scene names the lamp; a look that is never lit has none.
        Illuminant room = optics.DayScene.Room, lamp = optics.NightScene.Lamp;
        StackLight light = new(optics.Sheet, optics.Layers, room, lamp, optics.DayScene.Backing, optics.ViewedFrom);
        float[] day = new float[3], night = new float[3];
        light.Row([.. light.Uncoloured], 1, day, night);
        (double[] bareDay, double[] bareNight) = Bare(light);
        LightTable table = new(
            record.WidthPx, record.HeightPx, LookLevels.CountOf(record.WidthPx, record.HeightPx), 25.4 / record.Ppi, record.BleedMm,
            new(record.SizeMm.WidthMm - (2 * record.BleedMm), record.SizeMm.HeightMm - (2 * record.BleedMm)),
            optics.DayScene.RoomLux, optics.NightScene.RoomLux, optics.NightScene.LampCdPerM2, room.Name, lamp.Name,
            Math.Max(1, 1.05 * bareDay.Max()), Math.Max(LeastMost, 1.05 * Math.Max(bareNight.Max(), night.Max())),
            [.. day.Select(v => (double)v)], [.. night.Select(v => (double)v)], Luminance(room), MarkOf(record, optics));
        return (table, light);
    }

    // Nothing printed lets most light through; a full white without colour returns most.
    private static (double[] Day, double[] Night) Bare(StackLight light)
    {
        float[] day = new float[3], night = new float[3], whiteDay = new float[3], whiteNight = new float[3];
        light.Row(new byte[light.InkCount], 1, day, night);
        light.Row([.. light.Uncoloured], 1, whiteDay, whiteNight);
        return ([.. day.Concat(whiteDay).Select(v => (double)v)], [.. night.Concat(whiteNight).Select(v => (double)v)]);
    }

    // Luminance is linear in what was carried over: ask for it with one channel after the other.
    private static double[] Luminance(Illuminant room)
    {
        Xyz white = SpectralWeights.For(room).White;
        return [.. new (double R, double G, double B)[] { (1, 0, 0), (0, 1, 0), (0, 0, 1) }.Select(c => Bradford.Adapt(
            new((0.4124 * c.R) + (0.3576 * c.G) + (0.1805 * c.B), (0.2126 * c.R) + (0.7152 * c.G) + (0.0722 * c.B), (0.0193 * c.R) + (0.1192 * c.G) + (0.9505 * c.B)),
            WhitePoints.Srgb.Times(0.01), white.Times(1 / white.Y)).Y)];
    }

    private static string MarkOf(LookRecord record, LookOptics optics)
    {
        // Optics of inks and stock may be read anew while the planes stay: what a spot of every ink looks like stands for them.
        StackLight light = new(optics.Sheet, optics.Layers, optics.DayScene.Room, optics.NightScene.Lamp, optics.DayScene.Backing, optics.ViewedFrom);
        int width = light.InkCount + 1;
        byte[] spots = new byte[light.InkCount * width];
        for (int ink = 0; ink < light.InkCount; ink++)
            spots[(ink * width) + ink] = 200;
        float[] day = new float[3 * width], night = new float[3 * width];
        light.Row(spots, width, day, night);
        byte[] bytes = [.. System.Text.Encoding.ASCII.GetBytes(record.PlanesSha256 ?? ""), .. System.Runtime.InteropServices.MemoryMarshal.AsBytes(day.AsSpan()), .. System.Runtime.InteropServices.MemoryMarshal.AsBytes(night.AsSpan())];
        return Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes))[..16];
    }
}
