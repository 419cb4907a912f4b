using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Optics.Panels;

/// <summary>What the two pictures become as wishes for the panel: whites that can be reached everywhere, blacks that can be lifted.</summary>
/// <remarks>
/// Day white is the bare front over a back full of ink, so that it holds whatever lies behind: a night picture then cannot leak into
/// it. Night white is a share of the brightest the bare panel shows. Lifting blacks keeps dark day areas able to shine at night.
/// </remarks>
public sealed record PanelAim
{
    /// <summary>An aim.</summary>
    /// <param name="dayWhite">The white the eye takes by day, X, Y, Z in cd/m².</param>
    /// <param name="nightWhite">The white it takes when lit, X, Y, Z in cd/m².</param>
    /// <param name="liftPercent">L* that day black becomes, 0 to 60; chroma shrinks with it.</param>
    /// <param name="nightExposure">Night white over the bare panel's light, over 0 to 1.</param>
    public PanelAim(Xyz dayWhite, Xyz nightWhite, double liftPercent, double nightExposure)
    {
        (DayWhite, NightWhite) = (dayWhite, nightWhite);
        LiftPercent = Bounds.Within(liftPercent, 0, 60);
        NightExposure = Bounds.Within(nightExposure, 1e-3, 1);
    }

    /// <summary>The white the eye takes by day.</summary>
    public Xyz DayWhite { get; }

    /// <summary>The white it takes when lit.</summary>
    public Xyz NightWhite { get; }

    /// <summary>L* that day black becomes.</summary>
    public double LiftPercent { get; }

    /// <summary>Night white over the bare panel's light.</summary>
    public double NightExposure { get; }

    /// <summary>The aim for a panel.</summary>
    /// <param name="light">The panel at the strength of its white.</param>
    /// <param name="limits">Its ink limits.</param>
    /// <param name="liftPercent">L* that day black becomes.</param>
    /// <param name="nightExposure">Night white over the bare panel's light.</param>
    public static PanelAim For(PanelLight light, PanelLimits limits, double liftPercent, double nightExposure)
    {
        // All inks behind, each the same, as far as their sum may go.
        double[] bare = new double[light.InkCount], covered = new double[light.InkCount];
        for (int ink = 0; ink < limits.BackMost.Count; ink++)
            covered[limits.FrontMost.Count + ink] = Math.Min(limits.BackMost[ink], limits.BackTotal / limits.BackMost.Count);
        return new(light.See(covered).Day, light.See(bare).Night.Times(nightExposure), liftPercent, nightExposure);
    }

    /// <summary>What a colour of the day picture becomes.</summary>
    public Lab Day(Lab picture)
    {
        double keep = 1 - (LiftPercent / 100);
        return new(LiftPercent + (keep * picture.L), keep * picture.A, keep * picture.B);
    }

    /// <summary>How the panel looks by day to the eye adapted to day white.</summary>
    public Lab SeenByDay(Xyz light) => Lab.From(light, DayWhite);

    /// <summary>How the lit panel looks to the eye adapted to night white.</summary>
    public Lab SeenLit(Xyz light) => Lab.From(light, NightWhite);
}
