using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Shop.Run;

namespace Laydown.Edges.Tests.PressFiles;

/// <summary>Files of the second face are looked at through the sheet: whichever way it was turned, a place shows what lies behind it.</summary>
public sealed class TurnedLookLawTests
{
    private const int Wide = 7, High = 5;

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, false)]
    [InlineData(false, true)]
    public async Task Every_part_and_every_place_shows_what_lies_behind_it(bool reversed, bool upended)
    {
        Numbered planes = new();
        using DrawSheet draw = new(planes, null!);
        OpenedSheet opened = new(
            new("R-1", 1, false, Wide, High, 1, 1, 1, new(Wide, High), [new(1, 1, "Black", InkRole.Black, "a.tif", 0, reversed, upended)], [], false, false, 1, 1, [], 10, "m"),
            World.Run(new(Wide, High), [World.Item("T-1-1", 2, 2, [World.Colour])], []).Run, null!, [null]);

        foreach (PressPart part in new PressPart[] { new(0, 0, 0, Wide, High), new(0, 2, 1, 3, 2), new(0, 6, 4, 1, 1), new(0, 1, 0, 5, 3) })
        {
            byte[] seen = (await draw.CoveragesAsync(opened, part, _ => true, CancellationToken.None)).Value;
            for (int y = 0; y < part.Rows; y++)
                for (int x = 0; x < part.Columns; x++)
                    Assert.Equal(Wanted(part.Left + x, part.Top + y), seen[(y * part.Columns) + x]);
        }

        ReadSheet read = new(planes, draw);
        for (int y = 0; y < High; y++)
            for (int x = 0; x < Wide; x++)
                Assert.Equal((int)Wanted(x, y), (await read.AtPxAsync(opened, x, y, 0, CancellationToken.None)).Value.Inks[0].Code);

        byte Wanted(int x, int y) => Numbered.At(reversed ? Wide - 1 - x : x, upended ? High - 1 - y : y);
    }

    /// <summary>A file in which every value tells its place.</summary>
    private sealed class Numbered : IPressPlanes
    {
        public static byte At(int x, int y) => (byte)((10 * y) + x);

        public Reading<PressFileShape> Shape(PressFileAt file) => throw new NotSupportedException("Not asked for here.");

        public Task<Reading<PressFileShape>> ReadyAsync(PressFileAt file, CancellationToken cancellation) => throw new NotSupportedException("Not asked for here.");

        public Task<Reading<byte[]>> ReadAsync(PressFileAt file, PressPart part, CancellationToken cancellation) => Task.FromResult(Codes(file, part));

        public Reading<byte[]> Codes(PressFileAt file, PressPart part) => Reading.Of<byte[]>([.. Enumerable.Range(0, part.Rows)
            .SelectMany(y => Enumerable.Range(0, part.Columns).Select(x => At(part.Left + x, part.Top + y)))]);
    }
}
