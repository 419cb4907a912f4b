using Laydown.Layout.Packing;
using Laydown.Layout.Search;

namespace Laydown.Layout.Contours;

/// <summary>Looks for the shortest strip: the strip is the one bay, and open.</summary>
internal sealed class StripSearch
{
    private const float LargestStep = 0.02f;

    private readonly ContourJob job;
    private readonly SearchRules rules;
    private readonly Action<ContourResult>? better;
    private readonly int[] items, unplaced;
    private readonly Field first;
    private readonly BaySearch search;

    internal StripSearch(ContourJob job, SearchRules rules, Action<ContourResult>? better, CancellationToken stop)
    {
        (this.job, this.rules, this.better) = (job, rules, better);
        ContourStrip strip = job.Problem.Strip!;
        float low = (float)(strip.EdgeMarginMm - job.HalfGap - job.Slack), high = (float)(strip.WidthMm - strip.EdgeMarginMm + job.HalfGap + job.Slack);
        float across = high - low;
        items = [.. Enumerable.Range(0, job.Items).Where(i => Enumerable.Range(0, job.FormOf(i).Degrees.Count).Any(a => job.FormOf(i).At(a).Height <= across * Bay.Rounding))];
        unplaced = [.. Enumerable.Range(0, job.Items).Except(items)];
        Form[] forms = [.. items.Select(job.FormOf)];
        Bay bay = new(low, low, low + forms.Sum(f => f.Reach) + 1, high);
        Field[] fields = [.. Enumerable.Range(0, rules.Workers).Select(_ => new Field(job.Tables, forms, [], [], [bay]))];
        search = new(fields, [.. Enumerable.Range(0, rules.Workers).Select(w => new Chance((rules.Seed * 1000L) + w))], LargestStep, stop);
        first = fields[0];
    }

    /// <summary>The shortest layout found.</summary>
    internal ContourResult Best()
    {
        if (items.Length == 0)
            return new([], 0, 0, 0, job.Unplaced(unplaced, ContourJob.WantedRoom));
        First();
        search.Begin();
        better?.Invoke(Result());
        search.Run(BaySearch.Rounds(rules), () => better?.Invoke(Result()));
        return Result();
    }

    /// <summary>Puts the forms one by one as far to the left as a few tries find, large ones first.</summary>
    private void First()
    {
        int[] order = [.. Enumerable.Range(0, items.Length).OrderByDescending(i => first.Form(i).HullRoot * first.Form(i).Reach)];
        for (int i = 0; i < items.Length; i++)
            first.Lift(i);
        int tries = Math.Clamp(60_000 / items.Length, 40, 1000);
        float used = first.Bays[0].Left;
        foreach (int i in order)
        {
            first.Bays[0] = first.Bays[0] with { Right = used + first.Form(i).Reach };
            first.Put(i, search.Placer.Leftmost(i, 0, tries) ?? AtEnd(i, used));
            used = Math.Max(used, first.Right(i));
        }
    }

    private Pose AtEnd(int i, float used)
    {
        int angle = search.Placer.AnyAngle(i);
        Turned form = first.Form(i).At(angle);
        return new(0, angle, used - form.MinX, first.Bays[0].Bottom - form.MinY);
    }

    private ContourResult Result()
    {
        List<ContourSpot> spots = [.. items.Select((item, i) => job.Spot(item, search.Best[i]))];
        ContourStrip strip = job.Problem.Strip!;
        double used = spots.Select((s, i) => job.RightEnd(items[i], s)).Max() + strip.EdgeMarginMm;
        return new([new(null, spots)], used, 0, job.DrawnArea(items) / (strip.WidthMm * used), job.Unplaced(unplaced, ContourJob.WantedRoom));
    }
}
