using Laydown.Core.Tests.Raster.Screens;
using Laydown.Raster.Passes;
using Laydown.Raster.Screens;
using Laydown.Raster.Tiles;
using Xunit;

namespace Laydown.Core.Tests.Raster.Passes;

/// <summary>Missing nozzles made good before the screen: dots themselves, not tones.</summary>
public sealed class MendedScreenLawTests
{
    private const int Rows = 1024, Columns = 256;

    private static readonly PassPlan Plan = new(PassPlanLawTests.Head(1, 256, 1, 1), Rows);

    [Theory]
    [InlineData(64, 64)]
    [InlineData(192, 128)]
    [InlineData(1024, 64)]
    public void Dots_are_those_of_the_mended_sheet_however_it_is_cut(int tileRows, int tileColumns)
    {
        Tile sheet = Screened.Random(2, Rows, Columns, 3);
        NozzleMend mend = new(Plan, 0, [null, new HashSet<int> { 0, 63, 64, 66, 190, 255 }]);
        ILayerScreen screen = LayerScreens.Of([new("cyan", 0.6, null), new("black", 1, null)], Screened.Two, ScreenKind.Arrays);

        // By hand: the whole sheet is mended first and then screened at once.
        Tile mended = new(2, Rows, Columns);
        mend.Run(Around(sheet, 0, 0, Rows, Columns, mend.ReachPixels), mended);
        DotRows wanted = new(2, Rows, Columns, 2);
        screen.Run(mended, Rows, Columns, wanted, 0);

        DotRows made = Made(new MendedScreen(mend, screen), sheet, tileRows, tileColumns);
        for (int ink = 0; ink < 2; ink++)
            Assert.True(wanted.Plane(ink).SequenceEqual(made.Plane(ink)), Invariant($"ink {ink}"));
    }

    /// <summary>
    /// One dead row in 256, 720 dpi from 0.4 m, as for <see cref="EyeAlongFeedLawTests"/>, in dots of the product's own screen. A dead row shows by 0.0522 of its tone,
    /// give or take the grain of the sound halftone in the same run; mended, no more than the grain and what the tones leave (0.00193 at 0.75).
    /// Simulated elsewhere: sound 1.4, 1.3, 1.8, dead 14.0, 24.6, 38.4, mended 1.6, 1.3, 14.5 · 10⁻³, the last with what neighbours could not take dropped.
    /// </summary>
    [Theory]
    [InlineData(0.25, 0.0004)]
    [InlineData(0.5, 0.0007)]
    [InlineData(0.75, 0.0020)]
    public void A_dead_row_of_dots_is_seen_and_a_mended_one_is_lost_in_the_grain(double tone, double left)
    {
        Tile flat = new(1, Rows, Columns);
        for (int row = 0; row < Rows; row++)
            flat.Row(0, row).Fill((ushort)Math.Round(tone * Tile.Full));
        NozzleMend mend = new(Plan, 0, [new HashSet<int> { 100 }]);
        ILayerScreen screen = LayerScreens.Of(Screened.One, DropLevels.One, ScreenKind.Arrays);
        bool[] dead = [.. Enumerable.Range(0, Rows).Select(r => Plan.Meeting(0, r, 0).Nozzle == 100)];
        double[] sound = Means(Made(screen, flat, Rows, Columns)), mended = Means(Made(new MendedScreen(mend, screen), flat, Rows, Columns));

        double grain = Seen(sound, tone), line = Seen([.. sound.Select((m, r) => dead[r] ? 0 : m)], tone), after = Seen(mended, tone);
        Assert.InRange(grain, 0, 0.0025);
        Assert.Equal(0.0522 * tone, line, grain + 0.0003);
        Assert.InRange(after, 0, (2 * grain) + left);
        Assert.All(Enumerable.Range(0, Rows).Where(r => dead[r]), r => Assert.Equal(0, mended[r]));
        Assert.Equal(tone, mended.Average(), 0.001);
    }

    private static double Seen(double[] means, double tone)
    {
        // The ends of the strip are no part of the print that is judged.
        double[] seen = EyeAlongFeedLawTests.Nasanen([.. means.Select(m => m - tone)]);
        return seen[64..^64].Max(Math.Abs);
    }

    private static double[] Means(DotRows dots) => [.. Enumerable.Range(0, Rows).Select(r => Enumerable.Range(0, Columns).Sum(c => dots[0, r, c]) / (double)Columns)];

    private static DotRows Made(ILayerScreen screen, Tile sheet, int tileRows, int tileColumns)
    {
        DotRows whole = new(sheet.Inks, Rows, Columns, screen.BitsPerDot);
        for (int top = 0; top < Rows; top += tileRows)
        {
            int rows = Math.Min(tileRows, Rows - top);
            DotRows band = new(sheet.Inks, rows, Columns, screen.BitsPerDot);
            for (int left = 0; left < Columns; left += tileColumns)
            {
                int columns = Math.Min(tileColumns, Columns - left);
                screen.Run(Around(sheet, top, left, rows, columns, screen.ReachPixels), rows, columns, band, left);
            }

            for (int ink = 0; ink < sheet.Inks; ink++)
                for (int row = 0; row < rows; row++)
                    band.Row(ink, row).CopyTo(whole.Row(ink, top + row));
        }

        return whole;
    }

    // A part of the sheet with its margin; bare beyond the edges, as the engine lays it down.
    private static Tile Around(Tile sheet, int top, int left, int rows, int columns, int reach)
    {
        Tile tile = new(sheet.Inks, rows + (2 * reach), columns + (2 * reach));
        tile.PlaceAt(top - reach, left - reach);
        for (int ink = 0; ink < sheet.Inks; ink++)
            for (int row = Math.Max(0, top - reach); row < Math.Min(Rows, top + rows + reach); row++)
                for (int column = Math.Max(0, left - reach); column < Math.Min(Columns, left + columns + reach); column++)
                    tile.Row(ink, row - top + reach)[column - left + reach] = sheet.Row(ink, row)[column];
        return tile;
    }
}
