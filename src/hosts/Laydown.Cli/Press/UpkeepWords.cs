using Laydown.Cli.Words;
using Laydown.Plan.Runs;
using Laydown.Plan.Upkeep;

namespace Laydown.Cli.Press;

/// <summary>Tells a plan of upkeep in lines.</summary>
internal static class UpkeepWords
{
    private const int MostTasks = 40;

    public static void Tell(Answer answer, UpkeepPlan plan)
    {
        answer.Line(Invariant($"{plan.PressId}, {plan.From:yyyy-MM-dd HH:mm} to {plan.To:yyyy-MM-dd HH:mm}: {plan.Uses.Select(u => u.RunId).Distinct().Count()} runs, {plan.Care.Count} care tasks, {plan.LongStops.Count} long stops."));
        foreach (string warning in plan.Warnings)
            answer.Line("! " + warning);
        answer.Table(["tank", "ink", "now, ml", "used, ml", "poured, ml", "at the end, ml"], plan.Tanks.Select(t => (IReadOnlyList<string>)
            [t.TankId, InkWords.Of(t.Role), Ml(t.Levels[0].LevelMl), Ml(t.UsedMl), Ml(t.TopUps.Sum(p => p.Ml)), Ml(t.Levels[^1].LevelMl)]), named: true);
        answer.Table(["top up", "tank", "ml", "run", "when", "lots"], plan.Tanks.SelectMany(t => t.TopUps).OrderBy(t => t.At).Select(t => (IReadOnlyList<string>)
            [When(t.At), t.TankId, Ml(t.Ml), t.RunId ?? "–", t.WhilePrinting ? "while printing" : t.RunPauses ? "it pauses" : "before it", string.Join(", ", t.Lots.Select(l => l.Lot).DefaultIfEmpty("none on the shelf"))]), named: true);
        answer.Table(["order", "bottles", "ml missing", "by"], plan.Inks.Where(i => i.Packs > 0).Select(i => (IReadOnlyList<string>)
            [InkWords.Of(i.Role), Invariant($"{i.Packs}"), Ml(i.MissingMl), Invariant($"{i.OrderBy:yyyy-MM-dd}")]), named: true);
        answer.Table(["care", "rule", "what", "minutes", "by", "because"], plan.Care.Take(MostTasks).Select(c => (IReadOnlyList<string>)
            [When(c.At), c.RuleId, c.Name + (c.InterruptsRun is { } run ? Invariant($" (pause run {run})") : ""), Invariant($"{c.Minutes:0.#}"), c.By, c.Because]), named: true);
        if (plan.Care.Count > MostTasks)
            answer.Line(Invariant($"and {plan.Care.Count - MostTasks} more care tasks; --json lists all."));
        foreach (string caution in Cautions(plan))
            answer.Line("caution: " + caution);
        foreach (Laydown.Plan.Calendar.MaintenanceSpan window in plan.Maintenance ?? [])
            answer.Line(Invariant($"Maintenance {When(window.Start)} to {window.End:HH:mm}: {window}."));
        foreach (LongStop stop in plan.LongStops)
            Stop(answer, stop);
    }

    // Each once, the rule over them last.
    private static IEnumerable<string> Cautions(UpkeepPlan plan)
    {
        IReadOnlyList<TopUp> topUps = [.. plan.Tanks.SelectMany(t => t.TopUps)];
        List<string> all = [.. topUps.Count > 0 ? CareCautions.OfTopUp(topUps.Any(t => t.WhilePrinting)) : [], .. plan.Care.Take(MostTasks).SelectMany(c => c.Cautions)];
        return all.Where(c => c != Laydown.Plan.Runs.Cautions.Rule).Distinct().Concat(all.Count > 0 ? [Laydown.Plan.Runs.Cautions.Rule] : []);
    }

    private static void Stop(Answer answer, LongStop stop)
    {
        answer.Line(Invariant($"Long stop {When(stop.Start)} to {When(stop.End)}: {stop.Hours:0.##} h, over {stop.LimitHours:0.##} h ({stop.Source}).{(stop.NothingAfter ? " No run is planned after it: it lasts at least that long." : "")}"));
        foreach (LongStopOption option in stop.Options)
        {
            answer.Line(Invariant($"  {option.Name}: {option.Cost}{(ReferenceEquals(option, stop.Options[0]) ? ", the cheapest" : "")}"));
            if (option.FillAt is { } fill)
                answer.Line(Invariant($"    fill {string.Join(", ", option.Lines.Where(l => l.FluidMl > 0).Select(l => l.ChannelId))} at {When(fill)}, {Ml(option.Lines.Sum(l => l.FluidMl))} ml, {option.Lines.Sum(l => l.FillMinutes):0} min; back from {When(option.BackAt ?? stop.End)}, {option.Lines.Sum(l => l.BackMinutes):0} min, ready {When(option.ReadyAt)}{(option.OutsideMinutes > 0.5 ? Invariant($"; {option.OutsideMinutes:0} min of it outside the shifts") : "")}"));
            foreach (StorageLine line in option.Lines.Where(l => l.FillAt is not null))
                answer.Line(Invariant($"      {line.ChannelId}: fill {When(line.FillAt!.Value)}, {Ml(line.FluidMl)} ml, {line.FillMinutes:0.#} min; back {When(line.BackAt!.Value)}, {line.BackMinutes:0.#} min, {Ml(line.InkLostMl)} ml of ink lost"));
            foreach (ShortRun run in option.ShortRuns)
                answer.Line(Invariant($"    short run {When(run.At)}{(run.InShift ? "" : ", a visit outside the shifts")}"));
        }

        foreach (string caution in stop.Cautions)
            answer.Line("  caution: " + caution);
        foreach ((int i, string step) in stop.Before.Index())
            answer.Line(Invariant($"  before, {i + 1}: {step}"));
        foreach ((int i, string step) in stop.After.Index())
            answer.Line(Invariant($"  when it is used again, {i + 1}: {step}"));
    }

    private static string When(DateTimeOffset at) => Invariant($"{at:ddd yyyy-MM-dd HH:mm}");

    private static string Ml(double ml) => Invariant($"{ml:0}");
}
