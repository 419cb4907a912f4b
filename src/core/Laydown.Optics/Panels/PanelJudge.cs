using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Panels;

/// <summary>Says what a plan reaches: figures and maps, from the laydown as files hold it.</summary>
public static class PanelJudge
{
    /// <summary>Difference over which a pixel counts as out of reach, ΔE00; common practice, no source.</summary>
    public const double Reached = 3;

    private const int RobustPixels = 30_000;

    /// <summary>Judges a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="small">The whole of both pictures, small.</param>
    /// <param name="pixelsPerMm">Resolution of <paramref name="small"/>.</param>
    /// <param name="cancellation">Looked at between steps.</param>
    public static (PanelReport Report, PanelMaps Maps) Judge(PanelPlan plan, PairPicture small, double pixelsPerMm, CancellationToken cancellation)
    {
        JudgedPixels pixels = JudgedPixels.Of(plan, small, cancellation);
        GhostView ghost = GhostView.Of(plan, small, pixels, pixelsPerMm, cancellation);
        UnreachableReason[] reasons = new Reasons(plan, small, pixels).All(cancellation);
        PanelReport report = new(
            DifferenceSummary.Of(pixels.DayDifference), DifferenceSummary.Of(pixels.NightDifference), DifferenceSummary.Of(pixels.DayToPicture),
            Contrast(pixels, small, 0), Contrast(pixels, small, 3),
            100.0 * reasons.Count(r => r != UnreachableReason.Reached) / reasons.Length, Shares(reasons),
            ghost.Leak, DifferenceSummary.Of(ghost.Map), ghost.Correlation, LightLost(plan),
            Lab.From(plan.Aim.DayWhite, plan.Model.DayLight.RoomWhite.Y > 0 ? plan.Model.DayLight.RoomWhite : plan.Model.DayLight.LampWhite).L,
            plan.Aim.NightWhite.Y, pixels.NightLuminance.Average(), Range(pixels.NightLuminance), Range(DarkRoom(plan, pixels)),
            pixels.MeanInk(), pixels.Strength.Average(s => s) / 255.0, Robust(plan, small, pixels, pixelsPerMm, cancellation));
        return (report, new(small.Width, small.Height, pixels.DayDifference, pixels.NightDifference, ghost.Map, reasons));
    }

    private static List<ReasonShare> Shares(UnreachableReason[] reasons) =>
        [.. reasons.Where(r => r != UnreachableReason.Reached).GroupBy(r => r)
            .Select(g => new ReasonShare(g.Key, 100.0 * g.Count() / reasons.Length)).OrderByDescending(s => s.Percent)];

    /// <summary>Local contrast kept, percent: lightness against its mean over nine pixels, how much of these steps is seen of those that
    /// were wanted, by regression.</summary>
    /// <param name="pixels">What is seen and wanted.</param>
    /// <param name="small">The pair.</param>
    /// <param name="channel">0 by day, 3 lit.</param>
    internal static double Contrast(JudgedPixels pixels, PairPicture small, int channel)
    {
        double both = 0, own = 0;
        for (int y = 1; y < small.Height - 1; y++)
        {
            for (int x = 1; x < small.Width - 1; x++)
            {
                double s = Detail(pixels.Seen, small.Width, x, y, channel), w = Detail(pixels.Wanted, small.Width, x, y, channel);
                (both, own) = (both + (s * w), own + (w * w));
            }
        }

        return own > 0 ? 100 * both / own : 100;
    }

    private static double Detail(float[] values, int width, int x, int y, int channel)
    {
        double sum = 0;
        for (int dy = -1; dy <= 1; dy++)
        {
            for (int dx = -1; dx <= 1; dx++)
                sum += values[(6 * (((y + dy) * width) + x + dx)) + channel];
        }

        return values[(6 * ((y * width) + x)) + channel] - (sum / 9);
    }

    // Brightest light where the day must be white, against the bare panel.
    private static double LightLost(PanelPlan plan)
    {
        PairSolver solver = plan.Tables[0].Solver;
        Span<double> inks = stackalloc double[plan.Model.InkCount];
        double bare = solver.Light.See(inks).Night.Y;
        Lab brightest = plan.Aim.SeenLit(solver.Light.See(inks).Night);
        new PairSolver(solver.Light, plan.Model.Stack.Limits, plan.Aim, 0.01).Solve(plan.Aim.Day(new(100, 0, 0)), brightest, inks);
        return 100 * Math.Max(0, 1 - (solver.Light.See(inks).Night.Y / bare));
    }

    private static double Range(double[] luminance)
    {
        double[] sorted = [.. luminance.Order()];
        return sorted[(int)(0.99 * (sorted.Length - 1))] / Math.Max(1e-6, sorted[(int)(0.01 * (sorted.Length - 1))]);
    }

    private static double[] DarkRoom(PanelPlan plan, JudgedPixels pixels)
    {
        Scene night = plan.Model.Night;
        if (night.RoomLux == 0 || night.LampCdPerM2 == 0)
            return pixels.NightLuminance;
        PanelModel dark = new(plan.Model.Stack, plan.Model.Day, new(0, night.Room, night.LampCdPerM2, night.Lamp, night.Backing));
        return pixels.See(dark, pixels.Sample(RobustPixels), (light, inks) => light.See(inks).Night.Y);
    }

    private static List<RobustnessRow> Robust(PanelPlan plan, PairPicture small, JudgedPixels pixels, double pixelsPerMm, CancellationToken cancellation)
    {
        int[] sample = pixels.Sample(RobustPixels);
        Robustness robustness = new(plan, pixels, sample);
        List<RobustnessRow> rows = [];
        foreach ((string what, PanelModel model) in new[]
        {
            ("white +10 %", plan.Model.WithWhite(1.1)), ("white −10 %", plan.Model.WithWhite(0.9)),
            ("ink +5 %", plan.Model.WithInk(1.05)), ("ink −5 %", plan.Model.WithInk(0.95)),
            ("lamp LED-B3", plan.Model.WithLamp(Illuminant.LedB3)), ("lamp LED-B5", plan.Model.WithLamp(Illuminant.LedB5)),
        })
        {
            cancellation.ThrowIfCancellationRequested();
            rows.Add(robustness.Of(what, model));
        }

        foreach (double mm in new[] { 0.1, 0.2 })
            rows.Add(robustness.Moved(Invariant($"register {mm:0.0} mm"), small.Width, mm * pixelsPerMm));
        return rows;
    }
}
