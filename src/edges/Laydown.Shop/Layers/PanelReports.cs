using Laydown.Optics.Panels;

namespace Laydown.Shop.Layers;

/// <summary>Brings what the solver reports into the record that is kept.</summary>
internal static class PanelReports
{
    /// <summary>What was aimed at.</summary>
    public static LookAim Aim(PanelPlan plan, PanelReport report, LookWish wish)
    {
        List<string> because = [];
        if (wish.LiftPercent is null)
            because.Add(Invariant($"Day black is lifted to L* {plan.Aim.LiftPercent:0.#}: of the lifts tried this one leaves least undone in both views."));
        if (wish.NightExposure is null)
            because.Add(Invariant($"Night white is {100 * plan.Aim.NightExposure:0} % of the bare panel's light: of the exposures tried this one leaves least undone."));
        if (wish.White == WhiteChoice.Stepped)
            because.Add("The white is one of the named strengths, region by region.");
        if (wish.White == WhiteChoice.Free)
            because.Add("The strength of the white changes slowly over the piece, so that its edges are not seen by day.");
        if (plan.LightInksBare)
            because.Add("Light inks stay bare: gaps between dots of the dark inks let the night's hue through, and the pair comes nearer with them.");
        if (plan.ScatterLeftOut)
            because.Add("Colours of this ink set scatter: they were solved and judged as clear films that absorb as much; the proofs show them as they are.");
        return new(plan.WhiteStrengths, plan.Aim.LiftPercent, plan.Aim.NightExposure, plan.Aim.DayWhite.Y, report.NightWhiteCdPerM2, because)
        {
            DayWhite = plan.Aim.DayWhite,
            NightWhite = plan.Aim.NightWhite,
        };
    }

    /// <summary>How near it comes.</summary>
    /// <param name="report">As the solver judges it.</param>
    /// <param name="planeOf">For each plane of the look the solver's coverage, −1 for a bare one.</param>
    /// <param name="lit">Luminance at night, cd/m², spot by spot.</param>
    /// <param name="generic">Whether generic inks stand for some.</param>
    public static LookReport Report(PanelReport report, IReadOnlyList<int> planeOf, IReadOnlyList<float> lit, bool generic) => new(
        Of(report.Day), Of(report.Night), Of(report.DayToPicture), Of(report.Night), report.UnreachablePercent,
        [.. report.Reasons.Select(r => new LookReason(Camel(r.Reason), PanelMapColours.Words(r.Reason), r.Percent))],
        report.Ghost.Mean, report.Ghost.P95, report.Leak.P95, report.NightLightLostPercent, lit.Max(), report.NightMeanCdPerM2, lit.Min(),
        [.. planeOf.Select(p => p < 0 ? 0 : report.MeanInk[p])],
        [.. report.Robustness.Select(r => new LookChange(r.What, r.Day.Mean, r.Day.P95, r.Night.Mean, r.Night.P95))],
        Notes(generic),
        report.DayContrastPercent, report.NightContrastPercent, report.DayWhiteLStar, report.NightContrast, report.NightContrastDarkRoom,
        report.GhostCorrelation, report.MeanWhiteStrength);

    private static List<string> Notes(bool generic)
    {
        List<string> notes =
        [
            "The leak is what the night layer would do to the day view were nothing done against it; the ghost is what is left of it after the solver's compensation.",
            "Differences at night are those to the picture itself: only the day picture's blacks are lifted.",
        ];
        if (generic)
            notes.Add("The ink set carries no measured optics: generic inks stand for it, and the figures are as good as they are.");
        return notes;
    }

    private static LookDifference Of(DifferenceSummary summary) => new(summary.Mean, summary.P95, summary.Max);

    private static string Camel(UnreachableReason reason) => Invariant($"{char.ToLowerInvariant(reason.ToString()[0])}{reason.ToString()[1..]}");
}
