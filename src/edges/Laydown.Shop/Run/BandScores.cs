using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>Figures for the choice of modes how visible bands will be; planning itself knows neither passes nor eyes
/// (docs/decisions/0011).</summary>
/// <remarks>
/// The choice comes before the artwork is laid out, so tones of every ink of the stack stand in for it: any of them may be in the
/// picture. A length of 600 mm is
/// enough to meet all stands of a walk. A press that does not tell its placement is not judged. Results are kept beside the press they
/// belong to; being pure, they
/// are the same as figured anew.
/// </remarks>
public static class BandScores
{
    private const double LongestMm = 600;

    private static readonly ConditionalWeakTable<PressDescription, ConcurrentDictionary<string, BandScore>> Known = [];

    /// <summary>The bands of a mode: of the face where they are seen most.</summary>
    /// <returns>The score, or null where the press tells no placement or the mode cannot print the stack.</returns>
    public static BandScore? Of(PressDescription press, Mode mode, ModeDemand demand)
    {
        if (press.Placement is null)
            return null;
        double lengthMm = Math.Min(LongestMm, demand.Sheet.HeightMm);
        string key = Invariant($"{mode} {demand.ViewingDistanceM} {lengthMm} {string.Join(' ', demand.Stack.Layers.Select(l => (l.Face, l.Group)))}");
        if (Known.GetOrCreateValue(press).TryGetValue(key, out BandScore? known))
            return known;
        List<BandForecast> faces = [];
        foreach (IGrouping<SheetFace, Layer> face in PassWishes.Faces(demand.Stack))
        {
            Reading<PassPlan> plan = PassWishes.PlanOf(press, mode, face.Count(), lengthMm);
            if (!plan.IsTaken)
                return null;
            faces.Add(BandForecast.Of(PassWishes.Of(press, plan.Value, PassWishes.PlanesOf(press, face), null, demand.ViewingDistanceM)));
        }

        BandForecast worst = faces.MaxBy(f => f.VisibleDeltaL)!;
        return Known.GetOrCreateValue(press)[key] = new(worst.VisibleDeltaL, BandForecast.ObjectionableDeltaL, BandWords.Of(worst.Main));
    }
}
