using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Plan.Week;
using Laydown.Press.Inks;
using Laydown.Press.Machines;

namespace Laydown.Shop.Week;

/// <summary>From how a press is kept fit, and what was last written down of it, to care in the week.</summary>
/// <param name="press">The press.</param>
/// <param name="state">The press as it stands; null where nobody keeps its care.</param>
/// <param name="from">Start of the week.</param>
/// <param name="minuteOf">Minutes from then to an instant.</param>
/// <param name="inks">Its inks.</param>
/// <param name="labourPerHour">What an hour of work costs.</param>
internal sealed class WeekCareOf(PressDescription press, PressState? state, DateTimeOffset from, Func<DateTimeOffset, int> minuteOf, InkSet inks, Money labourPerHour)
{
    private readonly PressCare care = press.Care ?? PressCare.Usual(press);

    /// <summary>Whether its care is kept: the week leaves room for it.</summary>
    public bool IsKept => state is not null;

    /// <summary>Its care, with top-ups of tanks that are not topped up while it prints; null where none is kept.</summary>
    public IReadOnlyList<WeekCare>? Care => IsKept ? [.. care.Rules.Select(Rule), .. TopUps().Select(TopUp)] : null;

    /// <summary>How long it may stand; null where no care is kept, or every line circulates.</summary>
    public WeekStand? Stand
    {
        get
        {
            StopTerms terms = StopRules.TermsOf(press, inks, labourPerHour);
            DateTimeOffset used = state?.LastUsed ?? state?.At ?? from;
            return IsKept && terms.Lines.Count > 0
                ? new([.. terms.Lines.Select(l => new WeekLine(l.LimitMinutes, l.FillMinutes, l.BackMinutes, l.StoreCents))], terms.ShortRunMinutes, Math.Min(0, minuteOf(used)),
                    terms.ShortRunInkCents, terms.LabourPerHour.Cents, terms.PressPerHour.Cents, terms.VisitMinutes)
                : null;
        }
    }

    /// <summary>What a run uses of the intervals: hours of printing and ink, whichever fills more of one.</summary>
    public IReadOnlyDictionary<string, double>? UsesOf(Laydown.Plan.Runs.Run run)
    {
        if (!IsKept)
            return null;
        IReadOnlyList<TankUse> drawn = PressUses.InksOf(run, press);
        double hours = (run.Time.PrintMinutes + run.Time.HandlingMinutes) / 60;
        double Ml(string? tank) => drawn.Where(i => tank is null || i.TankId == tank).Sum(i => i.SetUpMl + i.PrintedMl);
        Dictionary<string, double> uses = care.Rules.ToDictionary(r => r.Id, r => Math.Max(hours / (r.EveryPrintHours ?? double.PositiveInfinity), Ml(r.TankId) / (r.EveryMl ?? double.PositiveInfinity)), StringComparer.Ordinal);
        foreach (Tank tank in TopUps())
            uses[TopUpOf(tank)] = Ml(tank.Id) / Poured(tank);
        return uses;
    }

    private WeekCare Rule(CareRule rule)
    {
        CareCounter? counter = state?.Counters.FirstOrDefault(c => c.RuleId == rule.Id);
        double every = Math.Min(rule.EveryHours * 60 ?? double.PositiveInfinity, rule.EveryDays * 1440.0 ?? double.PositiveInfinity);
        int minutes = double.IsInfinity(every) ? 0 : Math.Max(1, (int)Math.Min(every, int.MaxValue / 8));

        // What is not written down is done at once where it is due daily or by hours; longer intervals begin with the reading.
        bool atOnce = counter is null && (rule.EveryDays is 1 || rule.EveryHours <= 24 || rule.EveryPrintHours <= 8);
        double used = Math.Max((counter?.PrintHours ?? 0) / (rule.EveryPrintHours ?? double.PositiveInfinity), (counter?.Ml ?? 0) / (rule.EveryMl ?? double.PositiveInfinity));
        int last = Math.Min(0, minuteOf(counter?.LastDone ?? state?.At ?? from));
        return new(rule.Id, rule.Name, Whole(rule.Minutes), minutes, atOnce && minutes > 0 ? Math.Min(last, -minutes) : last, atOnce ? 1 : used, rule.WhileIdle, Adds(rule));
    }

    // Ink of care is gone from the tanks, too.
    private Dictionary<string, double>? Adds(CareRule rule) => rule.InkMlPerLine <= 0 ? null : TopUps().Where(t => rule.TankId is null || rule.TankId == t.Id)
        .ToDictionary(TopUpOf, t => rule.InkMlPerLine * press.Channels.Count(c => c.TankId == t.Id) / Poured(t), StringComparer.Ordinal);

    private IEnumerable<Tank> TopUps() => press.Tanks.Where(t => !t.TopUpWhilePrinting && t.CapacityMl > t.LowMl);

    private WeekCare TopUp(Tank tank)
    {
        double level = state?.Tanks.FirstOrDefault(t => t.TankId == tank.Id)?.LevelMl ?? tank.LevelMl;
        return new(TopUpOf(tank), Invariant($"Top up {tank.Id}"), Whole(care.TopUpMinutes), 0, 0, 1 - ((level - tank.LowMl) / Poured(tank)),
            Whole: care.PackMl / Poured(tank), Room: (tank.CapacityMl - tank.LowMl) / Poured(tank));
    }

    private double Poured(Tank tank) => UpkeepPlanner.UsualTopUpMl(tank, care.PackMl);

    /// <summary>The care that topping a tank up is.</summary>
    public static string TopUpOf(Tank tank) => Invariant($"top-up {tank.Id}");

    private static int Whole(double minutes) => Math.Max(1, (int)Math.Ceiling(minutes - 1e-9));
}
