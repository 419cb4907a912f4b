using Laydown.Raster.Passes;
using Laydown.Raster.Tiles;
using Xunit;

namespace Laydown.Core.Tests.Raster.Passes;

public sealed class NozzleMendLawTests
{
    private const int Columns = 40;

    /// <summary>
    /// The dead rows of <see cref="EyeAlongFeedLawTests"/>, mended. A row seen r rows away counts h(r) = 2k / (k² + 4π²r²): 0.0522,
    /// 0.0509, 0.0472 for r = 0, 1, 2.
    /// Tones 0.25 and 0.5 go half and half beside: g (h(0) − h(1)). At 0.75 each neighbour takes 0.25 and the next one 0.125: 0.75 h(0) −
    /// 0.5 h(1) − 0.25 h(2).
    /// Halftones simulated dot by dot had 1.3 to 1.8 · 10⁻³ of grain, and 1.6, 1.3 · 10⁻³ mended; 14.5 at 0.75, where what the neighbours
    /// could not take was dropped.
    /// </summary>
    [Theory]
    [InlineData(0.25, 0.00033)]
    [InlineData(0.5, 0.00067)]
    [InlineData(0.75, 0.00193)]
    public void Of_a_mended_dead_row_hardly_more_is_seen_than_the_grain_of_a_sound_halftone(double tone, double expected)
    {
        Tile mended = Mended(Flat(4096, tone), OnePass(4096), 100);
        double[] error = [.. Enumerable.Range(0, 4096).Select(r => (mended.Row(0, r)[0] / (double)Tile.Full) - tone)];
        double seen = EyeAlongFeedLawTests.Nasanen(error).Max(Math.Abs);
        Assert.Equal(expected, seen, 0.00005);
        Assert.True(EyeAlongFeedLawTests.DeadRow(tone).Max(Math.Abs) > 15 * seen);
    }

    [Fact]
    public void Ink_is_kept_while_three_rows_on_each_side_have_room_for_it()
    {
        Random chance = new(4);
        Tile source = new(1, 600, Columns);
        for (int row = 0; row < 600; row++)
            for (int x = 0; x < Columns; x++)
                source.Row(0, row)[x] = (ushort)chance.Next(0, 52_000);
        Tile mended = Mended(source, OnePass(600), 100);
        for (int x = 0; x < Columns; x++)
            Assert.Equal(Enumerable.Range(0, 600).Sum(r => (long)source.Row(0, r)[x]), Enumerable.Range(0, 600).Sum(r => (long)mended.Row(0, r)[x]));
    }

    [Fact]
    public void Half_goes_to_each_side_what_is_full_passes_on_and_the_dead_row_is_bare()
    {
        PassPlan plan = OnePass(600);
        int dead = Enumerable.Range(100, 256).Single(r => plan.Meeting(0, r, 0).Nozzle == 100);
        Tile low = Mended(Flat(600, 0.4), plan, 100), high = Mended(Flat(600, 0.8), plan, 100);
        Assert.Equal([0.4, 0.4, 0.6, 0, 0.6, 0.4, 0.4], Enumerable.Range(dead - 3, 7).Select(r => Math.Round(low.Row(0, r)[5] / 65535.0, 3)));

        // 0.8 is lost; beside there is room for 0.2 on each side, then for 0.2 again.
        Assert.Equal([0.8, 1, 1, 0, 1, 1, 0.8], Enumerable.Range(dead - 3, 7).Select(r => Math.Round(high.Row(0, r)[5] / 65535.0, 3)));
    }

    [Fact]
    public void The_share_of_one_pass_of_two_is_made_good_beside()
    {
        PassPlan plan = new(PassPlanLawTests.Head(1, 256, 2, 1), 1200);
        int row = Enumerable.Range(600, 256).Single(r => plan.Meeting(0, r, 0).Nozzle == 300 || plan.Meeting(0, r, 1).Nozzle == 300);
        Tile mended = Mended(Flat(1200, 0.4), plan, 300);
        Assert.Equal([0.4, 0.5, 0.4, 0.5, 0.4], Enumerable.Range(row - 2, 5).Select(r => Math.Round(mended.Row(0, r)[0] / 65535.0, 3)));
    }

    [Fact]
    public void Two_dead_rows_near_each_other_never_ask_more_of_a_row_than_it_has_room_for()
    {
        PassPlan plan = OnePass(600);
        NozzleMend mend = new(plan, 0, [new HashSet<int> { 100, 102, 103 }]);
        Tile mended = Run(mend, Flat(600, 0.5));
        int lost = 0;
        for (int row = 0; row < 600; row++)
        {
            bool dead = plan.Meeting(0, row, 0).Nozzle is 100 or 102 or 103;
            lost += dead ? 1 : 0;
            Assert.True(mended.Row(0, row)[0] >= (dead ? 0 : 32_767));
        }

        Assert.True(lost >= 6);
        Assert.InRange(Enumerable.Range(0, 600).Sum(r => (long)mended.Row(0, r)[0]), 590 * 32_767L, 600 * 32_768L);
    }

    [Fact]
    public void Nothing_is_put_where_nothing_was_asked_for()
    {
        PassPlan plan = OnePass(600);
        int dead = Enumerable.Range(100, 256).Single(r => plan.Meeting(0, r, 0).Nozzle == 100);
        Tile edge = Flat(600, 0.3);
        for (int row = 0; row < dead; row++)
            edge.Row(0, row).Clear();
        Tile mended = Mended(edge, plan, 100);
        Assert.Equal([0, 0, 0, 0, 0.6, 0.3], Enumerable.Range(dead - 3, 6).Select(r => Math.Round(mended.Row(0, r)[5] / 65535.0, 3)));
    }

    [Fact]
    public void Every_tile_size_gives_the_same_bytes()
    {
        Random chance = new(6);
        Tile source = new(2, 300, Columns);
        for (int ink = 0; ink < 2; ink++)
            for (int row = 0; row < 300; row++)
                for (int x = 0; x < Columns; x++)
                    source.Row(ink, row)[x] = (ushort)chance.Next(0, 65_536);
        NozzleMend mend = new(OnePass(300), 0, [new HashSet<int> { 7, 9, 10, 60, 200 }, null]);
        Tile whole = Run(mend, source, 300);
        foreach (int rows in new[] { 1, 2, 5, 64, 299 })
        {
            Tile cut = Run(mend, source, rows);
            for (int row = 0; row < 300; row++)
            {
                Assert.Equal<ushort>(whole.Row(0, row), cut.Row(0, row));
                Assert.Equal<ushort>(source.Row(1, row), cut.Row(1, row));
            }
        }
    }

    private static PassPlan OnePass(int rows) => new(PassPlanLawTests.Head(1, 256, 1, 1), rows);

    private static Tile Flat(int rows, double tone)
    {
        Tile flat = new(1, rows, Columns);
        for (int row = 0; row < rows; row++)
            flat.Row(0, row).Fill((ushort)Math.Round(tone * Tile.Full));
        return flat;
    }

    private static Tile Mended(Tile source, PassPlan plan, int nozzle) => Run(new(plan, 0, [new HashSet<int> { nozzle }]), source);

    private static Tile Run(NozzleMend mend, Tile source, int tileRows = 64)
    {
        Tile result = new(source.Inks, source.Rows, source.Columns);
        new StageChain([mend]).Run(new Source(source), tileRows, 17, new Sink(result), CancellationToken.None);
        return result;
    }

    private sealed class Source(Tile tile) : ITileSource
    {
        public int Inks => tile.Inks;

        public int Rows => tile.Rows;

        public int Columns => tile.Columns;

        public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into) => tile.Row(ink, row).Slice(firstColumn, into.Length).CopyTo(into);
    }

    private sealed class Sink(Tile whole) : ITileSink
    {
        public void Take(int firstRow, int firstColumn, Tile tile)
        {
            for (int ink = 0; ink < tile.Inks; ink++)
                for (int row = 0; row < tile.Rows; row++)
                    tile.Row(ink, row).CopyTo(whole.Row(ink, firstRow + row)[firstColumn..]);
        }
    }
}
