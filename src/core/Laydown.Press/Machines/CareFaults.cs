using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>What in the care of a press contradicts itself.</summary>
public static class CareFaults
{
    /// <summary>Every fault, each with JSON path; none where the press describes no care.</summary>
    /// <param name="press">The press as read.</param>
    /// <param name="file">File it came from.</param>
    public static IEnumerable<InputFault> Of(PressDescription press, string file) =>
        press.Care is { } care ? [.. care.Rules.SelectMany((r, i) => OfRule(press, care, r, i, file)), .. OfStops(care, file)] : [];

    private static IEnumerable<InputFault> OfRule(PressDescription press, PressCare care, CareRule rule, int index, string file)
    {
        string path = Invariant($"/care/rules/{index}");
        if (care.Rules.Take(index).Any(r => string.Equals(r.Id, rule.Id, StringComparison.Ordinal)))
            yield return new(file, null, path + "/id", rule.Id, "each id once");
        if ((rule.EveryHours ?? rule.EveryPrintHours ?? rule.EveryMl ?? rule.EveryDays) is null)
            yield return new(file, null, path, "no interval", "everyHours, everyPrintHours, everyMl or everyDays");
        foreach ((string name, double? value) in (IEnumerable<(string, double?)>)
            [("everyHours", rule.EveryHours), ("everyPrintHours", rule.EveryPrintHours), ("everyMl", rule.EveryMl), ("everyDays", rule.EveryDays)])
        {
            if (value is { } v && !(v > 0 && double.IsFinite(v)))
                yield return new(file, null, Invariant($"{path}/{name}"), Invariant($"{v}"), "over 0");
        }

        if (rule.TankId is { } id && press.Tanks.All(t => t.Id != id))
            yield return new(file, null, path + "/tankId", id, "one of " + string.Join(", ", press.Tanks.Select(t => t.Id)));
        if (!(rule.Minutes >= 0) || !(rule.InkMlPerLine >= 0))
            yield return new(file, null, path, Invariant($"{rule.Minutes} min, {rule.InkMlPerLine} ml"), "at least 0");
    }

    private static IEnumerable<InputFault> OfStops(PressCare care, string file)
    {
        LongStopRules stop = care.LongStop;
        foreach ((string name, double value, bool zero) in (IEnumerable<(string, double, bool)>)
        [
            ("longStop/limitHours", stop.LimitHours, false), ("longStop/whiteLimitHours", stop.WhiteLimitHours, false), ("longStop/fluidMlPerLine", stop.FluidMlPerLine, true),
            ("longStop/fillMinutesPerLine", stop.FillMinutesPerLine, true), ("longStop/backMinutesPerLine", stop.BackMinutesPerLine, true),
            ("longStop/inkLostMlPerLine", stop.InkLostMlPerLine, true), ("longStop/shortRunMinutes", stop.ShortRunMinutes, false),
            ("longStop/shortRunInkMlPerLine", stop.ShortRunInkMlPerLine, true), ("longStop/visitMinutes", stop.VisitMinutes, true), ("packMl", care.PackMl, false),
        ])
        {
            if (!double.IsFinite(value) || value < 0 || (value == 0 && !zero))
                yield return new(file, null, "/care/" + name, Invariant($"{value}"), zero ? "at least 0" : "over 0");
        }
    }
}
