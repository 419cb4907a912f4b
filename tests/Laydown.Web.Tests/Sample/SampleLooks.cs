using System.Collections.Concurrent;
using Laydown.Output.Layers;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Shop.Layers;

namespace Laydown.Web.Tests.Sample;

/// <summary>Looks of the day and night panel, drawn ink by ink: an estuary by day, a moon and stars with the lamp on.</summary>
internal static class SampleLooks
{
    public const string Item = "TW-1042-1";
    public const int Planes = 9;
    private static readonly ConcurrentDictionary<(int Width, int Height, double Night), byte[]> Drawn = new();
    private static readonly InkRole[] Process = [InkRole.Cyan, InkRole.Magenta, InkRole.Yellow, InkRole.Black];

    /// <summary>Writes a look of 1200 mm × 800 mm with 3 mm bleed on every side.</summary>
    /// <param name="root">The shop's folder.</param>
    /// <param name="lookId">Its id.</param>
    /// <param name="solved">Whether it carries a wish and a report.</param>
    /// <param name="ppi">Resolution.</param>
    /// <param name="nightAmount">Strength of the night layer, 0 to 1.</param>
    public static async Task<LookRecord> WriteAsync(string root, string lookId, bool solved, double ppi = 20, double nightAmount = 1)
    {
        using LookDraft draft = new(Path.Combine(root, "looks", Item));
        int width = (int)Math.Round(1206 / 25.4 * ppi), height = (int)Math.Round(806 / 25.4 * ppi);
        byte[] planes = Drawn.GetOrAdd((width, height, nightAmount), size => Draw(size.Width, size.Height, size.Night));
        await draft.WriteAsync(LookRecord.PlanesFile, planes, CancellationToken.None);
        foreach (string view in (string[])["day", "night"])
            await draft.WriteAsync(view + ".png", SamplePicture.Png(300, 200, view == "day" ? 1 : 2), CancellationToken.None);
        if (solved)
        {
            await draft.WriteAsync(LookRecord.WishFile, Wish(width, height), CancellationToken.None);
            foreach (string map in (string[])["day", "night", "ghost", "reason"])
                await draft.WriteAsync(Invariant($"map-{map}.png"), Map(map), CancellationToken.None);
        }

        LookRecord record = new(
            Item, lookId, new(SampleShopDay, new(9, 30), TimeSpan.Zero), solved ? LookHow.Solved : LookHow.Separated, width, height, ppi, new(1206, 806), 3,
            [
                new(SheetFace.First, InkGroup.Colour, 260, Inks(Process)), new(SheetFace.First, InkGroup.White, 100, Inks([InkRole.White])),
                new(SheetFace.First, InkGroup.Colour, 260, Inks(Process)),
            ],
            "acrylic-clear-5", "eight-inks", "long-belt-clear-sheets", true, SheetFace.First, new(500, "D50", 0, "LED-B4", 0.8), new(20, "D50", 3000, "LED-B4", 0.8), new('0', 64),
            solved ? LookWish.Usual : null, null, solved ? new([0.8], 12, 0.7, 140, 320, ["The white is as strong as the press prints it."]) : null,
            solved ? Report() : null, [], await draft.FilesAsync(CancellationToken.None), null);
        return await draft.PublishAsAsync(record, lookId, CancellationToken.None);
    }

    // Out of reach in the middle: a flat colour of the legend there, reached around it.
    private static byte[] Map(string name)
    {
        IReadOnlyList<MapKey> keys = name == "reason" ? PanelMapColours.ReasonKeys : PanelMapColours.DifferenceKeys;
        byte[] rgb = [.. from y in Enumerable.Range(0, 400) from x in Enumerable.Range(0, 600)
            let key = keys[Math.Abs(x - 300) < 60 && Math.Abs(y - 200) < 60 ? 4 : 0]
            from channel in (byte[])[key.Red, key.Green, key.Blue] select channel];
        return new LookPictures().Map(new(600, 400, rgb), name, keys);
    }

    private static DateOnly SampleShopDay => new(2026, 11, 25);

    private static LookPlane[] Inks(InkRole[] roles) => [.. roles.Select(r => new LookPlane(r, InkRoleNames.Of(r)))];

    // Nearest the viewer, so printed last: sky, water, a sun; white everywhere; printed first, behind it: dark but for a moon and stars.
    private static byte[] Draw(int width, int height, double night)
    {
        byte[] planes = new byte[Planes * width * height];
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
            {
                double u = x / (double)width, v = y / (double)height;
                bool sun = Near(u, v, 0.72, 0.3, 0.07), moon = Near(u, v, 0.3, 0.28, 0.09), water = v > 0.62 + (0.03 * Math.Sin(9 * u));
                double wave = 0.5 + (0.5 * Math.Sin((60 * v) + (4 * Math.Sin(7 * u))));
                double[] day = sun ? [0, 0.05, 0.5, 0] : water ? [0.55 + (0.2 * wave), 0.15, 0.25, 0.05] : [0.4 * (1 - v), 0.1 * (1 - v), 0.02, 0];
                bool star = ((x * 7919) + (y * 104729)) % 997 == 0;
                double dark = moon || star ? 0 : 0.9 - (0.3 * v);
                double[] back = [0.7 * dark, 0.6 * dark, 0.2 * dark, dark];
                for (int ink = 0; ink < 4; ink++)
                {
                    planes[(((ink * height) + y) * width) + x] = (byte)(255 * back[ink] * night);
                    planes[((((5 + ink) * height) + y) * width) + x] = (byte)(255 * day[ink]);
                }

                planes[(((4 * height) + y) * width) + x] = 220;
            }
        }

        return planes;
    }

    private static byte[] Wish(int width, int height)
    {
        byte[] wish = new byte[6 * width * height];
        byte[] values = [190, 122, 118, 60, 130, 110];
        for (int plane = 0; plane < 6; plane++)
            wish.AsSpan(plane * width * height, width * height).Fill(values[plane]);
        return wish;
    }

    private static bool Near(double u, double v, double cu, double cv, double r) => (((u - cu) * (u - cu) * 2.25) + ((v - cv) * (v - cv))) < r * r;

    private static LookReport Report() => new(
        new(0.9, 3.1, 9.2), new(2.2, 7.4, 15.8), new(4.1, 9.0, 21), new(6.2, 14, 30), 7.5,
        [new("nightTooBright", "The night picture is brighter there than lamp and white let it be.", 5.1), new("dayTooDark", "The day picture is darker there than the night layer behind lets it be.", 2.4)],
        0.4, 1.3, 0.8, 22, 310, 48, 1.1, [0.3, 0.12, 0.1, 0.03, 0.86, 0.4, 0.35, 0.1, 0.6],
        [new("white −10 %", 0.5, 1.2, 1.4, 3), new("register 0.2 mm", 0.1, 0.6, 0.2, 0.9)], ["Seen from 2 m."]);
}
