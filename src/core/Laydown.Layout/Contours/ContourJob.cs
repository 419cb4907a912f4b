using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Contours;

/// <summary>A problem made ready for the search: forms, one entry for each copy, tables of pairs; and the way back to spots in mm.</summary>
internal sealed class ContourJob
{
    internal const string WantedRoom = "room at one of its angles";

    private readonly List<int> itemPiece = [];
    private readonly List<int> itemCopy = [];
    private readonly Dictionary<string, int> indices;

    internal ContourJob(ContourProblem problem)
    {
        Problem = problem;
        HalfGap = problem.GapMm / 2;
        double largest = problem.Pieces.Max(p => Math.Max(p.Area.Bounds.WidthMm, p.Area.Bounds.HeightMm)) + problem.GapMm;
        Slack = Form.Slack * largest;
        Forms = [.. problem.Pieces.Select((p, i) => Form.Of(i, p.Area, p.Angles.Degrees, HalfGap, largest))];
        List<Form> all = [.. Forms];
        foreach (ContourStock stock in problem.Stocks)
        {
            Kinds.Add(new(stock, HalfGap, all.Count, largest));
            all.AddRange(Kinds[^1].Fixed);
        }

        Tables = new(all);
        indices = problem.Pieces.Select((p, i) => (p.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        for (int p = 0; p < Forms.Count; p++)
        {
            for (int copy = 1; copy <= problem.Pieces[p].Copies; copy++)
            {
                itemPiece.Add(p);
                itemCopy.Add(copy);
            }
        }

        Corners = [.. problem.Pieces.Select(p => p.Area.OuterRings().SelectMany(r => r.Points).ToArray())];
    }

    internal ContourProblem Problem { get; }

    internal double HalfGap { get; }

    /// <summary>What all forms are grown by beyond half the gap, and so the room they lie in.</summary>
    internal double Slack { get; }

    internal List<Form> Forms { get; }

    internal List<BoardKind> Kinds { get; } = [];

    internal PairTables Tables { get; }

    /// <summary>How many copies of all pieces.</summary>
    internal int Items => itemPiece.Count;

    /// <summary>Outer corners of each piece as drawn.</summary>
    internal PointMm[][] Corners { get; }

    internal int PieceOf(int item) => itemPiece[item];

    /// <summary>The number of a piece by its id.</summary>
    internal int IndexOf(string pieceId) => indices[pieceId];

    /// <summary>The spot of an item for a shift of its drawn shape.</summary>
    internal ContourSpot SpotAt(int item, int angle, double x, double y) =>
        new(Problem.Pieces[itemPiece[item]].Id, itemCopy[item], x, y, FormOf(item).Degrees[angle]);

    internal Form FormOf(int item) => Forms[itemPiece[item]];

    /// <summary>The spot of an item, for its form's centre at x, y.</summary>
    internal ContourSpot Spot(int item, Pose pose, double shiftX = 0, double shiftY = 0)
    {
        Form form = FormOf(item);
        double degrees = form.Degrees[pose.Angle];
        (double sin, double cos) = Turned.SinCos(degrees);
        PointMm c = form.Centre;
        return new(
            Problem.Pieces[itemPiece[item]].Id, itemCopy[item],
            pose.X + shiftX - ((cos * c.XMm) - (sin * c.YMm)), pose.Y + shiftY - ((sin * c.XMm) + (cos * c.YMm)), degrees);
    }

    /// <summary>How far to the right the drawn shape of an item reaches at a spot.</summary>
    internal double RightEnd(int item, ContourSpot spot)
    {
        (double sin, double cos) = Turned.SinCos(spot.AngleDegrees);
        double most = double.MinValue;
        foreach (PointMm p in Corners[itemPiece[item]])
            most = Math.Max(most, (cos * p.XMm) - (sin * p.YMm));
        return most + spot.XMm;
    }

    /// <summary>Sums up the items without a place by piece.</summary>
    internal IReadOnlyList<UnplacedPiece> Unplaced(IEnumerable<int> items, string wanted) =>
    [
        .. items.GroupBy(i => itemPiece[i]).Select(g => new UnplacedPiece(
            Problem.Pieces[g.Key].Id, g.Count(),
            Invariant($"{Problem.Pieces[g.Key].Area.Bounds.WidthMm:0.##} × {Problem.Pieces[g.Key].Area.Bounds.HeightMm:0.##} mm"), wanted)),
    ];

    /// <summary>Copies of items by number that stand for the result.</summary>
    internal double DrawnArea(IEnumerable<int> items) => items.Sum(i => FormOf(i).DrawnArea);
}
