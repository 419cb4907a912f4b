using Laydown.Colour.Spaces;

namespace Laydown.Optics.Panels;

/// <summary>Finds the inks in front of and behind the white that come nearest to a wanted pair of colours.</summary>
/// <remarks>
/// Least squares over both views with the weights of CIEDE2000 frozen at the wish, a small charge for ink, and the ink sums as steep
/// walls; by Levenberg's and Marquardt's damping with inks held at their bounds where the slope pushes outward [Marquardt1963].
/// Several starts; the best end counts. The same pair gives the same inks whatever was solved before.
/// </remarks>
public sealed class PairSolver
{
    private const int MostSteps = 200;
    private const double SoftWall = 20;
    private readonly PanelLight light;
    private readonly PanelLimits limits;
    private readonly double nightWeight, wall;

    /// <summary>A solver.</summary>
    /// <param name="light">The panel at the strength of its white.</param>
    /// <param name="limits">Its ink limits.</param>
    /// <param name="aim">Whites of both views.</param>
    /// <param name="nightWeight">Weight of the night view against the day view, 0 to 1000: 1 balanced, 0.1 day first.</param>
    /// <param name="wall">Steepness of the walls at the ink sums: difference for one full ink over.</param>
    /// <param name="inkCharge">Charge for one full ink, as a difference: decides between mixtures that look alike, so that neighbours
    /// get like inks. 0.1 costs some hundredths of a difference at most where little ink would do worse.</param>
    public PairSolver(PanelLight light, PanelLimits limits, PanelAim aim, double nightWeight, double wall = 200, double inkCharge = 0.1)
    {
        InkCharge = Laydown.Measures.Bounds.Within(inkCharge, 0.001, 1);
        (this.light, this.limits, Aim) = (light, limits, aim);
        (this.nightWeight, this.wall) = (Laydown.Measures.Bounds.Within(nightWeight, 0, 1000), Laydown.Measures.Bounds.Within(wall, 1, 1e4));
    }

    /// <summary>Charge for one full ink.</summary>
    public double InkCharge { get; }

    /// <summary>Whites of both views.</summary>
    public PanelAim Aim { get; }

    /// <summary>Number of inks, in front and behind.</summary>
    public int InkCount => light.InkCount;

    /// <summary>What the search moves: a tone for each ink, one for a light and a dark ink of one hue.</summary>
    internal PanelTones Tones => light.Tones;

    /// <summary>The panel.</summary>
    internal PanelLight Light => light;

    /// <summary>Best inks for a pair.</summary>
    /// <param name="day">Wanted by day, as the eye adapted to day white sees it.</param>
    /// <param name="night">Wanted when lit.</param>
    /// <param name="inks">Receives inks in front, then behind; no sum and no ink is over its limit.</param>
    /// <returns>What is left: weighted squared differences, charge for ink included.</returns>
    public double Solve(Lab day, Lab night, Span<double> inks)
    {
        Span<double> tones = stackalloc double[Tones.Count];
        double best = SolveToWalls(day, night, tones);
        Tones.Inks(tones, inks);
        Limit(inks);
        return best;
    }

    /// <summary>The same as tones, with the hair over the sums left on: what the search itself found.</summary>
    internal double SolveToWalls(Lab day, Lab night, Span<double> tones)
    {
        PairSearch search = new(this, day, night, Math.Min(wall, SoftWall));
        Span<double> trial = stackalloc double[Tones.Count];
        double best = double.MaxValue;
        for (int start = 0; start < Starts; start++)
        {
            Start(start, trial);
            double left = search.Descend(trial, MostSteps);
            if (left >= best)
                continue;
            best = left;
            trial.CopyTo(tones);
        }

        // Steep walls make a search creep along them: it first runs against soft ones, then these are made steep where it ended.
        return wall > SoftWall ? new PairSearch(this, day, night, wall).Descend(tones, MostSteps) : best;
    }

    /// <summary>Tones near a guess: one search from there; the hair over the sums is left on.</summary>
    /// <param name="day">Wanted by day.</param>
    /// <param name="night">Wanted when lit.</param>
    /// <param name="tones">The guess; receives the tones.</param>
    /// <param name="steps">Most steps.</param>
    /// <param name="enough">Share of what is left that a step must gain to go on.</param>
    /// <returns>What is left.</returns>
    internal double Refine(Lab day, Lab night, Span<double> tones, int steps, double enough = 0) =>
        new PairSearch(this, day, night, wall).Descend(tones, steps, enough);

    /// <summary>What is left for given tones.</summary>
    /// <param name="day">Wanted by day.</param>
    /// <param name="night">Wanted when lit.</param>
    /// <param name="tones">Tones in front, then behind: of panels without light inks simply the inks.</param>
    public double Left(Lab day, Lab night, ReadOnlySpan<double> tones) => new PairSearch(this, day, night, wall).Left(tones);

    internal double NightWeight => nightWeight;

    internal double Wall => wall;

    internal PanelLimits Limits => limits;

    internal ReadOnlySpan<double> Most => Tones.Most;

    internal const int Starts = 3;

    // Little ink everywhere; colours in front and dark behind; dark in front and colours behind. Last ink of a layer is taken as any other.
    private void Start(int number, Span<double> tones)
    {
        for (int tone = 0; tone < tones.Length; tone++)
        {
            bool inFront = tone < Tones.FrontCount;
            double share = number switch { 0 => 0.2, 1 => inFront ? 0.1 : 0.6, _ => inFront ? 0.5 : 0.05 };
            tones[tone] = share * Most[tone];
        }
    }

    // Walls give way a little: the last hair over a sum is taken off all inks of that side alike.
    private void Limit(Span<double> inks)
    {
        Scale(inks[..Tones.FrontInks], limits.FrontTotal);
        Scale(inks[Tones.FrontInks..], limits.BackTotal);
    }

    private static void Scale(Span<double> inks, double total)
    {
        double sum = 0;
        foreach (double ink in inks)
            sum += ink;
        if (sum <= total)
            return;
        foreach (ref double ink in inks)
            ink *= total / sum;
    }
}
