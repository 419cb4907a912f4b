using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Raster.Passes;

/// <summary>Draws what bands will look like around the worst place.</summary>
/// <remarks>The bands as they are printed, averaged over two pixels, not as the eye filters them: the eye that looks at the preview does
/// that itself.</remarks>
public static class BandPreview
{
    /// <summary>Draws a detail of the sheet.</summary>
    /// <param name="wish">What was forecast.</param>
    /// <param name="forecast">Its forecast, for the worst place.</param>
    /// <param name="times">How often the error is shown: 1 as it is, more to see it better.</param>
    /// <param name="rows">Pixels down, 1 to 4096.</param>
    /// <param name="columns">Pixels across, 1 to 4096.</param>
    /// <param name="pixelsPerMm">Scale, over 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    public static BandImage Draw(BandWish wish, BandForecast forecast, double times, int rows, int columns, double pixelsPerMm)
    {
        Bounds.Within(rows, 1, 4096);
        Bounds.Within(columns, 1, 4096);
        double rowsPerPixel = 1 / Bounds.Within(pixelsPerMm, 0.01, 100) / wish.Plan.Head.RowMm;
        double middle = forecast.AlongShare * wish.Plan.Rows, half = rows * rowsPerPixel / 2;
        double first = Math.Max(0, Math.Min(middle - half, wish.Plan.Rows - (2 * half)));
        Dictionary<(int, NozzleFlaws), FeedProfile> profiles = [];
        foreach (BandInk ink in wish.Inks)
            if (!profiles.ContainsKey((ink.Layer, ink.Flaws)))
                profiles[(ink.Layer, ink.Flaws)] = FeedProfile.Of(wish.Plan, ink.Layer, wish.Errors, ink.Flaws);

        byte[] rgb = new byte[rows * columns * 3];
        for (int row = 0; row < rows; row++)
        {
            double from = first + (row * rowsPerPixel);
            Parts[] parts = [.. wish.Inks.Select(i => Parts.Of(profiles[(i.Layer, i.Flaws)], from, rowsPerPixel, times))];
            double along = Math.Clamp((first + ((row + 0.5) * rowsPerPixel)) / wish.Plan.Rows, 0, 1);
            Line(wish, parts, along, forecast.AcrossShare, columns, rgb.AsSpan(row * columns * 3, columns * 3));
        }

        return new(rows, columns, rgb);
    }

    private static void Line(BandWish wish, Parts[] parts, double along, double across, int columns, Span<byte> rgb)
    {
        BandPicture picture = wish.Picture;
        int row = Math.Min((int)(along * picture.Rows), picture.Rows - 1), middle = Math.Min((int)(across * picture.Columns), picture.Columns - 1);
        for (int x = 0; x < columns; x++)
        {
            // Pixels of the small picture are far larger than those of the detail: its neighbours are shown beside, a third of the width
            // each.
            int column = Math.Clamp(middle + ((x * 3 / columns) - 1), 0, picture.Columns - 1);
            double red = 1, green = 1, blue = 1;
            for (int ink = 0; ink < wish.Inks.Count; ink++)
            {
                double covered = parts[ink].On(Math.Clamp(picture.Row(ink, row)[column], 0, 1), wish.Mended);
                red *= 1 - (covered * (1 - wish.Inks[ink].Red));
                green *= 1 - (covered * (1 - wish.Inks[ink].Green));
                blue *= 1 - (covered * (1 - wish.Inks[ink].Blue));
            }

            rgb[x * 3] = Encoded(red);
            rgb[(x * 3) + 1] = Encoded(green);
            rgb[(x * 3) + 2] = Encoded(blue);
        }
    }

    private static byte Encoded(double linear) => Srgb.EncodeChannel(Math.Clamp(linear, 0, 1));

    private readonly record struct Parts(double Small, double Gap, double Register, double Lost)
    {
        // A tent two pixels wide, so that rows finer than pixels do not beat with them.
        public static Parts Of(FeedProfile profile, double from, double rows, double times)
        {
            double middle = from + (rows / 2), all = 0, small = 0, gap = 0, register = 0, lost = 0;
            int first = Math.Max(0, (int)(middle - rows)), last = Math.Min(profile.Error.Length - 1, (int)(middle + rows));
            for (int row = first; row <= last; row++)
            {
                double weight = Math.Max(1e-9, 1 - (Math.Abs(row + 0.5 - middle) / rows));
                small += weight * DotTones.Small(profile.Error[row]);
                gap += weight * DotTones.Gap(profile.Error[row]);
                register += weight * profile.Register[row];
                lost += weight * profile.Lost[row];
                all += weight;
            }

            double each = times / all;
            return new(small * each, gap * each, register * each, lost * each);
        }

        public double On(double tone, bool mended) => Math.Clamp(
            tone + (DotTones.OfError(tone) * Small) + (DotTones.OfGap(tone) * Gap) + (DotTones.OfRegister(tone) * Register)
                + (DotTones.OfLost(tone, mended) * Lost),
            0, 1);
    }
}
