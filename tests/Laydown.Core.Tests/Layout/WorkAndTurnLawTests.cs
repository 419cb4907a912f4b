using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Core.Tests.Layout;

/// <summary>Fronts and backs that share a sheet: turned over, each back lies on its front, for every way to turn and to lie.</summary>
public sealed class WorkAndTurnLawTests
{
    // Places are halves and differences of numbers under 10⁴: their rounding stays far under this.
    private const double SlackMm = 1e-6;

    private static readonly SizeMm Board = new(1220, 2440);

    public static TheoryData<double, double, int, SheetTurn, bool> Sheets()
    {
        TheoryData<double, double, int, SheetTurn, bool> all = [];
        foreach ((double width, double height) in new[] { (400.0, 300.0), (301.3, 407.7), (90, 40), (590, 1150) })
            foreach (SheetTurn turn in Enum.GetValues<SheetTurn>())
                foreach (int quantity in new[] { 1, 7, 24, 101 })
                    all.Add(width, height, quantity, turn, quantity != 24);
        return all;
    }

    [Theory, MemberData(nameof(Sheets))]
    public void Turned_over_each_back_lies_on_its_front_with_its_head_at_the_same_edge(double width, double height, int quantity, SheetTurn turn, bool mayTurn)
    {
        LayoutResult result = Solve(new("p", new(width, height), 5, quantity, mayTurn), turn);

        Assert.True(result.IsWhole);
        foreach (SheetLayout sheet in result.Sheets)
        {
            Assert.Equal(new SheetFaces(turn, true, 1.6), sheet.Faces);
            foreach (Placement placed in sheet.Placements)
            {
                // The file of the first face, printed on the second as well, must show the other picture of this very piece here.
                Placement seen = TurnedOver.Of(placed, sheet.Sheet, turn);
                Placement other = Assert.Single(sheet.Placements, o => Apart(Centre(o), Centre(seen)) < SlackMm);
                Assert.Equal(seen.BackUp, other.BackUp);
                Assert.Equal(seen.AngleDegrees, other.AngleDegrees);
                Assert.Equal(seen.Place.WidthMm, other.Place.WidthMm);
            }
        }
    }

    [Theory, MemberData(nameof(Sheets))]
    public void All_are_made_in_pairs_within_the_margins_and_apart_by_twice_the_register(double width, double height, int quantity, SheetTurn turn, bool mayTurn)
    {
        LayoutResult result = Solve(new("p", new(width, height), 5, quantity, mayTurn), turn);

        int made = result.Sheets.Sum(s => s.Repeats * s.Placements.Count);
        Assert.InRange(made, quantity, quantity + 1);
        Assert.Equal(0, made % 2);
        Assert.Equal(Enumerable.Range(1, result.Sheets.Sum(s => s.Placements.Count)).Count(), result.Sheets.SelectMany(s => s.Placements).Select(p => p.Copy).Distinct().Count());
        RectMm inner = new RectMm(0, 0, Board.WidthMm, Board.HeightMm).Grown(-8 + SlackMm);
        foreach (SheetLayout sheet in result.Sheets)
        {
            Assert.Equal(sheet.Placements.Count(p => p.BackUp), sheet.Placements.Count(p => !p.BackUp));
            Assert.All(sheet.Placements, p => Assert.True(inner.Holds(p.Place)));
            for (int i = 0; i < sheet.Placements.Count; i++)
                Assert.All(sheet.Placements.Skip(i + 1), o => Assert.False(sheet.Placements[i].Place.Grown(1.6 - SlackMm).Overlaps(o.Place.Grown(1.6 - SlackMm))));
        }
    }

    [Theory]
    [InlineData(SheetTurn.Sideways)]
    [InlineData(SheetTurn.HeadToFoot)]
    public void Turned_over_twice_all_lies_where_it_lay(SheetTurn turn)
    {
        foreach (int quarter in Enumerable.Range(0, 4))
        {
            Placement placed = new("p", 1, new(17.25, 31.5, 200.125, 100.75), quarter % 2 == 1, AngleDegrees: 90 * quarter);

            Assert.Equal(placed, TurnedOver.Of(TurnedOver.Of(placed, Board, turn), Board, turn));
        }

        PointMm corner = new(3.5, 8.25);
        Assert.Equal(corner, TurnedOver.Of(TurnedOver.Of(corner, Board, turn), Board, turn));
    }

    /// <summary>A point of the front picture and the one behind it in the back picture fall on each other through the sheet, for every way the piece lies.</summary>
    [Theory]
    [InlineData(SheetTurn.Sideways)]
    [InlineData(SheetTurn.HeadToFoot)]
    public void A_hole_in_the_upper_left_of_the_front_is_in_the_upper_right_of_the_back(SheetTurn turn)
    {
        SizeMm printed = new(200, 100);
        PointMm hole = new(20, 80), behind = new(180, 80);
        foreach (int quarter in Enumerable.Range(0, 4))
        {
            SizeMm lying = quarter % 2 == 1 ? printed.Turned() : printed;
            Placement front = new("p", 1, new(33, 71, lying.WidthMm, lying.HeightMm), quarter % 2 == 1, AngleDegrees: 90 * quarter);
            Placement back = TurnedOver.Of(front, Board, turn);
            PointMm onFront = TurnedOver.Of(new PictureOnSheet(front, printed, mirrored: false).Of(hole), Board, turn);

            Assert.InRange(Apart(onFront, new PictureOnSheet(back, printed, mirrored: false).Of(behind)), 0, SlackMm);
        }
    }

    private static LayoutResult Solve(Piece piece, SheetTurn turn) => WorkAndTurn.OnBoards(piece, Board, 8, new(0, 0), new(turn, true, 1.6));

    private static double Apart(PointMm one, PointMm other) => Math.Sqrt(Math.Pow(one.XMm - other.XMm, 2) + Math.Pow(one.YMm - other.YMm, 2));

    private static PointMm Centre(Placement placed) => new(placed.Place.XMm + (placed.Place.WidthMm / 2), placed.Place.YMm + (placed.Place.HeightMm / 2));
}
