using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>Ink of a run: what the pictures take and what set-up takes.</summary>
public static class InkNeeds
{
    /// <summary>Ink of each role that the press carries and the ink set holds, in the order of roles.</summary>
    /// <remarks>Printed = mean laydown × printed area × full laydown of the mode. Set-up ink is the same for every channel.</remarks>
    public static IReadOnlyList<InkUse> Of(RunRequest request, Mode mode)
    {
        double full = InkVolume.FullMlPerM2(mode);
        double area = request.Items.Sum(i => request.AreaM2(i.Item.Id));
        return [.. request.Press.Channels
            .Where(c => request.InkSet.Find(c.Role) is not null)
            .GroupBy(c => c.Role).OrderBy(g => g.Key)
            .Select(g =>
            {
                double covered = request.Items.Sum(i => request.AreaM2(i.Item.Id) * i.Ink.Where(l => l.Role == g.Key).Sum(l => l.MeanCoverage));
                return new InkUse(g.Key, [.. g.Select(c => c.Id)], covered * full, request.Press.Costs.SetUpInkMl * g.Count(),
                    area > 0 ? 100 * covered / area : 0);
            })];
    }

    /// <summary>Most ink that stands on one spot, layers of both faces together, µm (1 ml/m² is 1 µm).</summary>
    public static double HighestInkUm(RunRequest request, Mode mode) =>
        InkVolume.FullMlPerM2(mode) * HighestTotal(request);

    /// <summary>The same in full laydowns, whatever the mode lays.</summary>
    public static double HighestTotal(RunRequest request) =>
        request.Items.Select(i => HighestTotal(i, request.Stack.Layers.Count)).DefaultIfEmpty(0).Max();

    /// <summary>Ink of all layers spread evenly over all sheets, µm (1 ml/m² is 1 µm); what bends a sheet as it shrinks.</summary>
    public static double MeanInkUm(RunRequest request, Mode mode)
    {
        double sheetsM2 = request.Sheets.Sum(s => s.Repeats * s.Sheet.AreaM2);
        double inkMl = request.Items.Sum(i => request.AreaM2(i.Item.Id) * i.Ink.Sum(l => l.MeanCoverage)) * InkVolume.FullMlPerM2(mode);
        return sheetsM2 > 0 ? inkMl / sheetsM2 : 0;
    }

    private static double HighestTotal(PlannedItem item, int layers) =>
        Enumerable.Range(0, layers).Sum(l => item.Ink.Where(c => c.Layer == l).Select(c => c.MaxTotal).DefaultIfEmpty(0).Max());
}
