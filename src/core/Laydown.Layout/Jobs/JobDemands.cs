using Laydown.Layout.Sheets;

namespace Laydown.Layout.Jobs;

/// <summary>What a job must be before it is laid out.</summary>
public static class JobDemands
{
    /// <summary>Most copies of all pieces together.</summary>
    public const int MostCopies = 200_000;

    private const int MostFaults = 50;

    /// <summary>All that is wrong with a job; empty where it is sound.</summary>
    public static IReadOnlyList<JobFault> Faults(LayoutJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        List<JobFault> faults = [.. Twice("pieces", job.Pieces.Select(p => p.Id)), .. Twice("stocks", job.Stocks.Select(s => s.Id))];
        long copies = job.Pieces.Sum(p => (long)p.Quantity);
        if (copies > MostCopies)
            faults.Add(new("/pieces", Invariant($"{copies} copies"), Invariant($"at most {MostCopies} together")));
        if (job.Stocks.Select(s => s.Kind).Distinct().Count() > 1)
            faults.Add(new("/stocks", "boards and rolls", "boards alone or rolls alone"));
        if (job.Rules.Process == CutProcess.Guillotine && job.Pieces.Any(p => p.Contour is not null))
            faults.Add(new("/rules/process", "guillotine with contours", "free, for pieces that are cut along a contour"));
        if (job.Rules.OneLayout && (IsByContour(job) || job.Stocks.Any(s => s.Kind == JobStockKind.Roll)))
            faults.Add(new("/rules/oneLayout", "one layout for contours or rolls", "rectangles on boards"));
        for (int i = 0; i < job.Pieces.Count && faults.Count < MostFaults; i++)
            faults.AddRange(OfPiece(job.Pieces[i], i));
        for (int i = 0; i < job.Stocks.Count && faults.Count < MostFaults; i++)
            faults.AddRange(OfStock(job.Stocks[i], i));
        if (job.Belt is not null)
            faults.AddRange(BeltDemands.Faults(job));
        else if (job.Stocks.Count == 0)
            faults.Add(new("/stocks", "none", "at least one board or roll, or a belt"));
        else
            faults.AddRange(RollDemands.Faults(job));
        return faults;
    }

    /// <summary>Whether a job takes the search for contours: contours among pieces or stocks.</summary>
    internal static bool IsByContour(LayoutJob job) => job.Pieces.Any(p => p.Contour is not null) || job.Stocks.Any(s => s.Contour is not null);

    private static IEnumerable<JobFault> Twice(string list, IEnumerable<string> ids) => ids.GroupBy(i => i, StringComparer.Ordinal)
        .Where(g => g.Count() > 1).Take(MostFaults).Select(g => new JobFault("/" + list, Invariant($"the id {g.Key} {g.Count()} times"), "each id once"));

    private static IEnumerable<JobFault> OfPiece(JobPiece piece, int at)
    {
        bool isRectangle = piece.WidthMm is > 0 && piece.HeightMm is > 0;
        if (piece.Contour is null ? !isRectangle : piece.WidthMm is not null || piece.HeightMm is not null)
            yield return new(Invariant($"/pieces/{at}"), piece.Contour is null ? "no size and no contour" : "a contour and a size", "either widthMm and heightMm, or a contour");
        if (piece.Quantity < 1)
            yield return new(Invariant($"/pieces/{at}/quantity"), Invariant($"{piece.Quantity}"), "1 or more");
        if (piece.OversAllowed is < 0 or > MostCopies)
            yield return new(Invariant($"/pieces/{at}/oversAllowed"), Invariant($"{piece.OversAllowed}"), Invariant($"0 to {MostCopies}"));
        if (piece.AnglesDegrees?.Any(a => !double.IsFinite(a)) ?? false)
            yield return new(Invariant($"/pieces/{at}/anglesDegrees"), "an angle that is no number", "numbers of degrees");
        else if (piece.Contour is null && !piece.AnyAngle && piece.Angles.FirstOrDefault(a => a % 90 != 0) is var odd and not 0)
            yield return new(Invariant($"/pieces/{at}/anglesDegrees"), Invariant($"{odd}° for a rectangle"), "quarter turns, or a contour");
        else if (piece.Contour is null && !piece.AnyAngle && piece.Angles.All(a => a is 90 or 270))
            yield return new(Invariant($"/pieces/{at}/anglesDegrees"), "a rectangle that always lies on its side", "0 or 180 among the angles, or width and height changed round");
    }

    private static IEnumerable<JobFault> OfStock(JobStock stock, int at)
    {
        if (stock.WidthMm - (2 * stock.EdgeMarginMm) < 1 || stock.HeightMm - (2 * stock.EdgeMarginMm) < 1)
        {
            yield return new(
                Invariant($"/stocks/{at}/edgeMarginMm"), Invariant($"{stock.EdgeMarginMm:0.###} mm on {stock.WidthMm:0.###} × {stock.HeightMm:0.###} mm"),
                "margins that leave at least 1 mm");
        }

        if (stock.Kind == JobStockKind.Roll && (stock.Contour is not null || stock.KeepOutsMm is { Count: > 0 }))
            yield return new(Invariant($"/stocks/{at}"), "a roll with a contour or keep-outs", "a plain roll");
    }
}
