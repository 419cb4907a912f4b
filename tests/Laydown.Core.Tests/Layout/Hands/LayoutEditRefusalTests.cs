using Laydown.Layout.Hands;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.Hands;

public sealed class LayoutEditRefusalTests
{
    private static readonly HandRules Rules = new([new("a", new(300, 200), 3, 2, true), new("b", new(500, 400), 3, 1, false, new(0, 0, 500, 400))], new(1220, 2440), 10, 5, CutProcess.Free);
    private static readonly IReadOnlyList<HandSheet> Start = [new(1, [new("a", 10, 10, Locked: true), new("a", 400, 10), new("b", 10, 300)])];

    public static TheoryData<string, HandEdit> Bad() => new()
    {
        { "sheet 2", new(HandVerb.Move, 1, 0, 0, 0) },
        { "sheet 0", new(HandVerb.Move, -1, 0, 0, 0) },
        { "piece 4", new(HandVerb.Move, 0, 3, 0, 0) },
        { "a locked piece", new(HandVerb.Move, 0, 0, 0, 0) },
        { "a locked piece", new(HandVerb.TakeOff, 0, 0) },
        { "NaN", new(HandVerb.Move, 0, 1, double.NaN, 0) },
        { "Infinity", new(HandVerb.Move, 0, 1, 0, double.PositiveInfinity) },
        { "within -1", new(HandVerb.Move, 0, 1, 0, 0, ReachMm: -1) },
        { "a panel", new(HandVerb.Turn, 0, 2) },
        { "sheet 1", new(HandVerb.Pull, 0, 1, To: 0) },
        { "sheet 8", new(HandVerb.Pull, 0, 1, To: 7) },
        { "printed once", new(HandVerb.Split, 0) },
        { "nothing", new(HandVerb.Put, 0) },
        { "a", new(HandVerb.Put, 0, PieceId: "a") },
    };

    [Theory, MemberData(nameof(Bad))]
    public void What_makes_no_sense_is_refused_by_name(string found, HandEdit edit) =>
        Assert.Contains(found, Assert.Single(LayoutEdit.Apply(Start, edit, Rules).Faults).Found, StringComparison.Ordinal);

    [Fact]
    public void Sheets_from_outside_are_refused_by_path()
    {
        Assert.Equal("/sheets", Field(null));
        Assert.Equal("/sheets/0", Field([new(0, [])]));
        Assert.Equal("/sheets/0/spots/0/pieceId", Field([new(1, [new("none", 0, 0)])]));
        Assert.Equal("/sheets/0/spots/0", Field([new(1, [new("a", double.NaN, 0)])]));
        Assert.Equal("/sheets/0/spots/0", Field([new(1, [new("a", 0, 1e7)])]));
        Assert.Equal("/sheets/0/spots/0/angle", Field([new(1, [new("a", 0, 0, 45)])]));
        Assert.Equal("/sheets", Field([new(1, [.. Enumerable.Repeat(new HandSpot("a", 0, 0), HandSheets.MostSpots + 1)])]));
        Assert.True(HandSheets.Read([new(1, [new("a", 1.00049, 0)])], Rules).Value[0].Spots[0].XMm == 1);
    }

    private static string Field(IReadOnlyList<HandSheet>? sheets) => HandSheets.Read(sheets, Rules).Faults[0].Field;
}
