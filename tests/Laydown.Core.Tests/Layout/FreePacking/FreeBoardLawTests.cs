using Laydown.Layout.FreePacking;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout.FreePacking;

public sealed class FreeBoardLawTests
{
    public static IEnumerable<TheoryDataRow<int>> Seeds() => Enumerable.Range(1, 30).Select(s => new TheoryDataRow<int>(s));

    // Every rectangle of the grid is looked at one by one: bare, and no wider one is bare.
    [Theory, MemberData(nameof(Seeds))]
    public void Bare_rectangles_are_those_a_plain_look_over_the_grid_finds(int seed)
    {
        const int side = 10;
        Random chance = new(seed);
        FreeModel model = new(new([new("board", side, side, null, 1, [])], [new("p", 1, 1, 1, false)], new(CutProcess.Free)));
        FreeBoard board = new();
        board.Open(model, 0);
        for (int n = chance.Next(14); n > 0 && !board.Rests.IsEmpty; n--)
        {
            Bare b = board.Rests[chance.Next(board.Rests.Length)];
            int w = 1 + chance.Next(Math.Min(4, b.W)), h = 1 + chance.Next(Math.Min(4, b.H));
            board.Add(model, new(0, new(b.X, b.Y, b.X + w, b.Y + h), false));
        }

        // Some come off again.
        bool[] marked = [.. board.Spots.ToArray().Select(_ => chance.Next(3) == 0)];
        board.Remove(model, marked);

        Bare[] bare = [.. All(side).Where(b => board.Spots.ToArray().All(s => Apart(s.Place, b)))];
        Assert.Equal(bare.Where(b => !bare.Any(o => o != b && o.Holds(b))).Order(ByPlace), board.Rests.ToArray().Order(ByPlace));
        Assert.Equal(board.Spots.ToArray().Sum(s => s.Place.Area), board.Used);
    }

    private static readonly Comparer<Bare> ByPlace = Comparer<Bare>.Create((a, b) => (a.X, a.Y, a.Right, a.Top).CompareTo((b.X, b.Y, b.Right, b.Top)));

    private static bool Apart(Bare a, Bare b) => a.X >= b.Right || b.X >= a.Right || a.Y >= b.Top || b.Y >= a.Top;

    private static IEnumerable<Bare> All(int side) =>
        from x in Enumerable.Range(0, side)
        from right in Enumerable.Range(x + 1, side - x)
        from y in Enumerable.Range(0, side)
        from top in Enumerable.Range(y + 1, side - y)
        select new Bare(x, y, right, top);
}
