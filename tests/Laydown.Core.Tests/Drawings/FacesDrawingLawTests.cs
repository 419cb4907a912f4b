using Laydown.Core.Tests.Plan;
using Laydown.Layout.Repeats;
using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Plan.Drawings;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;

namespace Laydown.Core.Tests.Drawings;

/// <summary>Both faces on the belt: each piece is drawn where it lies on that face, to one scale, with the picture that is up.</summary>
public sealed class FacesDrawingLawTests
{
    private static readonly SizeMm Board = new(1220, 2440);

    public static TheoryData<SheetTurn, bool, bool, bool> Ways()
    {
        TheoryData<SheetTurn, bool, bool, bool> all = [];
        foreach (SheetTurn turn in Enum.GetValues<SheetTurn>())
            foreach (bool oneFile in new[] { false, true })
                foreach (bool onItsSide in new[] { false, true })
                    all.Add(turn, oneFile, onItsSide, turn == SheetTurn.Sideways);
        return all;
    }

    [Theory, MemberData(nameof(Ways))]
    public void Every_piece_is_drawn_on_both_faces_where_it_lies(SheetTurn turn, bool oneFile, bool onItsSide, bool farLay)
    {
        (Run run, PressDescription press) = Of(turn, oneFile, onItsSide);
        Drawn drawn = new(FacesDrawing.Draw(press with { FarSideLay = farLay }, run));
        drawn.IsSound();

        SheetLayout sheet = run.Sheets[0];
        (double X, double Y, double W, double H)[] sheets = [.. drawn.Rects.Where(r => Math.Abs((r.W / r.H) - (onItsSide ? 2 : 0.5)) < 1e-3)];
        Assert.Equal(2, sheets.Length);
        Assert.Equal(sheets[0].W, sheets[1].W);
        double scale = sheets[0].W / (onItsSide ? 2440 : 1220);
        for (int face = 0; face < 2; face++)
        {
            foreach (Placement placed in sheet.Placements.Select(p => face == 0 ? p : TurnedOver.Of(p, Board, turn)))
            {
                RectMm r = placed.Place, at = onItsSide ? new(2440 - r.TopMm, r.XMm, r.HeightMm, r.WidthMm) : r;
                Assert.Contains(drawn.Rects, d => Near(d.X, sheets[face].X + (at.XMm * scale)) && Near(d.Y, sheets[face].Y + sheets[face].H - (at.TopMm * scale))
                    && Near(d.W, at.WidthMm * scale) && Near(d.H, at.HeightMm * scale));
            }
        }

        int pieces = sheet.Placements.Count;
        Assert.Equal(pieces, drawn.Texts.Count(t => t.Text == "front"));
        Assert.Equal(pieces, drawn.Texts.Count(t => t.Text == "back"));
    }

    private static (Run Run, PressDescription Press) Of(SheetTurn turn, bool oneFile, bool onItsSide)
    {
        (Run run, PressDescription press, _) = ReleaseCheckLawTests.Planned();
        SheetFaces faces = new(turn, oneFile, 1.6);
        Piece piece = new("p", new(500, 380), 5, 7, true);
        SheetLayout sheet = oneFile
            ? WorkAndTurn.OnBoards(piece, Board, 8, new(), faces).Sheets[^1]
            : StepAndRepeat.OnBoards(piece, Board, 8, new(), bothFaces: true).Sheets[^1] with { Faces = faces };
        Layer front = new(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false);
        BeltPlace belt = new(2600, onItsSide ? 2440 : 1220, onItsSide ? 1220 : 2440, onItsSide, [new(1, 15, onItsSide ? 2440 : 1220, 1)], ["A"], [], 0, "pins");
        return (run with { Sheets = [sheet], Belt = belt, Stack = new([front, front with { Face = SheetFace.Second, ArtworkPage = 2 }], false, []) }, press);
    }

    // Coordinates are written to two decimals.
    private static bool Near(double one, double other) => Math.Abs(one - other) < 0.02;
}
