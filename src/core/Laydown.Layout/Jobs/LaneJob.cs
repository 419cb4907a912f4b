using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Layout.Jobs;

/// <summary>Jobs of blanks on a belt: lanes as short as can be with the least open vacuum; exact, so there is no search to go on.</summary>
internal static class LaneJob
{
    internal static JobLayout Solve(JobWriter writer)
    {
        LayoutJob job = writer.Job;
        JobBelt belt = job.Belt!;
        LaneBlank[] blanks = [.. job.Pieces.Select(p => new LaneBlank(p.Id, new(p.WidthMm!.Value, p.HeightMm!.Value), p.Quantity, p.MayTurn))];
        Reading<BeltPlace> laid = blanks.Length == 1
            ? LanePlan.Solve(blanks[0].Id, blanks[0].Size, blanks[0].Count, blanks[0].MayTurn, belt.ToBelt()).Then(p => Reading.Of(Named(p, blanks[0])))
            : LanePlan.Solve("the blanks", blanks, belt.AnyOrder, belt.ToBelt());
        return laid.Match(
            place => writer.InLanes(Of(belt, place), []),
            faults => writer.InLanes(null, [.. blanks.Select(b => new UnplacedPiece(b.Id, b.Count, faults[0].Found, faults[0].Wanted))]));
    }

    private static BeltPlace Named(BeltPlace place, LaneBlank blank) => place with
    {
        Lanes = [.. place.Lanes.Select(l => l with { BlankId = blank.Id, FeedMm = place.FeedMm, Turned = place.Turned })],
    };

    private static JobLanes Of(JobBelt belt, BeltPlace place)
    {
        double feedMm = place.Lanes.Max(l => l.Blanks * l.FeedMm!.Value);
        long blanks = place.Lanes.Sum(l => (long)l.Blanks);
        return new(place, feedMm, JobLanes.Hours(belt, feedMm, blanks) is { } hours and > 0 ? blanks / hours : null);
    }
}
