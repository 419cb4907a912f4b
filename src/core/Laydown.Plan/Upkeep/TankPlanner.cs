using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>Follows the level of one tank along the plan and says when ink is poured.</summary>
/// <remarks>
/// Ink of a run's set-up and of care is drawn at once, printed ink evenly over the span. Where the press may be topped up while it prints, ink is poured when the level reaches the
/// low mark; else when the week laid it, or where no week did before the run, so that the tank stays above the low mark to its end. What is poured are whole bottles as far as they find room, and no more than the rest of the plan asks for, but for the last bottle.
/// </remarks>
internal sealed class TankPlanner
{
    // Levels are sums of some thousand draws; a millionth of a ml is far under what anybody reads.
    private const double SlackMl = 1e-6;

    // The week weighs ink in shares of what a top-up pours: rounding of a plan of thousands of runs.
    private const double LaidSlackMl = 0.01;

    private readonly Tank tank;
    private readonly double packMl;
    private readonly LaidTask[] laid;
    private readonly DateTimeOffset laidUntil;
    private readonly List<InkFlow> flows;
    private readonly List<TankPoint> points = [];
    private readonly List<TopUp> topUps = [];
    private readonly List<TankShortage> shortages = [];
    private double level;
    private double leftMl;

    private TankPlanner(Tank tank, double levelMl, double packMl, IEnumerable<InkFlow> flows, LaidCare? laid)
    {
        (this.tank, this.packMl, level) = (tank, packMl, levelMl);
        this.laid = tank.TopUpWhilePrinting ? [] : [.. (laid?.Tasks ?? []).Where(t => t.TankId == tank.Id)];
        laidUntil = laid is null || tank.TopUpWhilePrinting ? DateTimeOffset.MinValue : laid.Until;
        this.flows = [.. flows.Where(f => f.Ml > 0).OrderBy(f => f.Start).ThenBy(f => f.End)];
        leftMl = this.flows.Sum(f => f.Ml);
    }

    /// <summary>What a top-up at the low mark pours of a tank: whole bottles as far as it finds room for them, else what fills it; ml.</summary>
    /// <param name="tank">The tank.</param>
    /// <param name="packMl">Ink in one bottle, ml, over 0.</param>
    public static double UsualMl(Tank tank, double packMl)
    {
        double room = tank.CapacityMl - tank.LowMl, whole = Math.Floor((room + SlackMl) / packMl) * packMl;
        return whole > 0 ? whole : room;
    }

    /// <summary>The plan of a tank from its last reading to the end.</summary>
    /// <param name="tank">The tank.</param>
    /// <param name="role">Its ink.</param>
    /// <param name="levelMl">Level as read, ml.</param>
    /// <param name="packMl">Ink in one bottle, ml.</param>
    /// <param name="flows">Ink drawn from it, in any order.</param>
    /// <param name="at">When it was read.</param>
    /// <param name="to">End of the time planned.</param>
    /// <param name="laid">Care as the week laid it; null where no week did.</param>
    public static TankPlan Plan(Tank tank, InkRole role, double levelMl, double packMl, IEnumerable<InkFlow> flows, DateTimeOffset at, DateTimeOffset to, LaidCare? laid)
    {
        TankPlanner planner = new(tank, levelMl, packMl, flows, laid);
        double used = planner.leftMl;
        planner.Follow(at, to);
        return new(tank.Id, role, tank.CapacityMl, tank.LowMl, planner.points, planner.topUps, planner.shortages, used);
    }

    // Between two borders nothing begins or ends, so the level falls in a straight line.
    private void Follow(DateTimeOffset at, DateTimeOffset to)
    {
        points.Add(new(at, level));
        DateTimeOffset[] borders = [.. flows.SelectMany(f => (DateTimeOffset[])[f.Start, f.End]).Concat(laid.Select(t => t.Start).Where(t => t < to)).Append(to).Distinct().Order()];
        for (int i = 0; i < borders.Length; i++)
        {
            Begin(borders[i]);
            if (i + 1 < borders.Length)
                Print(borders[i], borders[i + 1]);
        }

        Mark(to);
    }

    private void Begin(DateTimeOffset at)
    {
        foreach (LaidTask task in laid.Where(t => t.Start == at))
            Pour(at, 0, task.RunId ?? flows.Find(f => f.RunId is not null && f.Start >= at)?.RunId, whilePrinting: false, task.RunId is not null);
        foreach (InkFlow run in flows.Where(f => f.Start == at && !f.AtOnce && at >= laidUntil))
            BeforeRun(run);
        foreach (InkFlow once in flows.Where(f => f.Start == at && f.AtOnce))
        {
            bool printing = flows.Exists(f => f.Start < at && at < f.End);
            if (level - once.Ml < tank.LowMl - SlackMl && at >= laidUntil && (tank.TopUpWhilePrinting || !printing))
                Pour(at, tank.LowMl + once.Ml - level, once.RunId, printing);
            Mark(at);
            Take(once.Ml, at, at, once.RunId);
        }
    }

    // All that is drawn till the run ends must be in the tank now where nothing can be poured meanwhile.
    private void BeforeRun(InkFlow run)
    {
        double need = flows.Where(f => f.Start >= run.Start && f.End <= run.End).Sum(f => f.Ml);
        double least = tank.TopUpWhilePrinting ? tank.LowMl - level : tank.LowMl + need - level;
        if (least > SlackMl)
            Pour(run.Start, least, run.RunId, whilePrinting: false);
    }

    private void Print(DateTimeOffset from, DateTimeOffset to)
    {
        InkFlow? run = flows.Find(f => !f.AtOnce && f.Start <= from && to <= f.End);
        if (run is null)
            return;
        double hours = (to - from).TotalHours, rate = run.Ml / (run.End - run.Start).TotalHours;
        Mark(from);
        DateTimeOffset now = from;
        while (tank.TopUpWhilePrinting && level - (rate * hours) < tank.LowMl - SlackMl)
        {
            // The low mark is reached within the span: pour there and go on with what is left of it.
            double untilLow = Math.Max(0, (level - tank.LowMl) / rate);
            DateTimeOffset low = now.AddHours(untilLow);
            Take(rate * untilLow, now, low, run.RunId);
            hours -= untilLow;
            now = low;
            Mark(now);
            if (!Pour(now, 0, run.RunId, whilePrinting: now > run.Start))
                break;
        }

        Take(rate * hours, now, to, run.RunId);
        Mark(to);
    }

    private void Take(double ml, DateTimeOffset from, DateTimeOffset to, string? runId)
    {
        double after = level - ml;

        // The week pours after care that brings a tank just under its mark, before the next run.
        bool laidLater = to <= laidUntil && (from == to || after >= tank.LowMl - LaidSlackMl) && after >= 0;
        if (ml > 0 && after < tank.LowMl - SlackMl && !laidLater)
            FallLow(ml, after, from, to, runId);
        level = Math.Max(0, after);
        leftMl -= ml;
    }

    private void FallLow(double ml, double after, DateTimeOffset from, DateTimeOffset to, string? runId)
    {
        DateTimeOffset When(double mark) => from.AddHours((to - from).TotalHours * Math.Clamp((level - mark) / ml, 0, 1));
        DateTimeOffset? dry = after < -SlackMl ? When(0) : null;
        TankShortage now = new(tank.Id, runId, When(tank.LowMl), dry, Math.Max(0, -after));

        // Parts of one run are one shortage.
        int known = shortages.FindIndex(s => s.RunId is not null && s.RunId == runId);
        if (known < 0)
            shortages.Add(now);
        else
            shortages[known] = shortages[known] with { DryAt = shortages[known].DryAt ?? dry, MissingMl = shortages[known].MissingMl + now.MissingMl };
    }

    private bool Pour(DateTimeOffset at, double leastMl, string? runId, bool whilePrinting, bool runPauses = false)
    {
        double room = tank.CapacityMl - level;
        double ml = Amount(Math.Min(Math.Max(leastMl, leftMl + tank.LowMl - level), room), leastMl, room);
        if (ml <= SlackMl)
            return false;
        Mark(at);
        level += ml;
        topUps.Add(new(tank.Id, at, ml, runId, whilePrinting, [], RunPauses: runPauses));
        Mark(at);
        return true;
    }

    private double Amount(double wantedMl, double leastMl, double roomMl)
    {
        double whole = Math.Ceiling((wantedMl - SlackMl) / packMl) * packMl;
        if (whole <= roomMl)
            return whole;
        double fitting = Math.Floor((roomMl + SlackMl) / packMl) * packMl;
        return fitting > 0 && fitting >= leastMl ? fitting : roomMl;
    }

    private void Mark(DateTimeOffset at)
    {
        if (points[^1] != new TankPoint(at, level))
            points.Add(new(at, level));
    }
}
