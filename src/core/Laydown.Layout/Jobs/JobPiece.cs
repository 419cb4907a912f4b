namespace Laydown.Layout.Jobs;

/// <summary>A piece that is wanted: a rectangle, or a contour.</summary>
/// <param name="Id">Unique in its job.</param>
/// <param name="Quantity">How many; at least 1.</param>
/// <param name="WidthMm">Width of a rectangle, mm; null for a contour.</param>
/// <param name="HeightMm">Height of a rectangle, mm; null for a contour.</param>
/// <param name="Contour">The contour; null for a rectangle.</param>
/// <param name="AnglesDegrees">Angles it may be turned to, counter-clockwise; null for all quarter turns.</param>
/// <param name="AnyAngle">Whether it may lie at every angle.</param>
/// <param name="Direction">Contours that name the same direction all lie at one common angle; null for none.</param>
/// <param name="StockId">The roll it must lie on, where rolls are of different media; null for any.</param>
public sealed record JobPiece(
    string Id,
    int Quantity,
    double? WidthMm,
    double? HeightMm,
    JobContour? Contour,
    IReadOnlyList<double>? AnglesDegrees,
    bool AnyAngle = false,
    string? Direction = null,
    string? StockId = null)
{
    /// <summary>Name of a set, such as a kit or a colour match: pieces that name the same one want the same boards. Null for none.</summary>
    public string? KeepWith { get; init; }

    /// <summary>Day it is due; null where it does not matter. Pieces of one day want the same boards, earlier days come on earlier sheets.</summary>
    public DateOnly? Due { get; init; }

    /// <summary>How many copies more than wanted may be made to fill the last board; 0 or more.</summary>
    public int OversAllowed { get; init; }

    /// <summary>The angles it may lie at, each from 0 up to under 360 degrees; with <see cref="AnyAngle"/> no limit.</summary>
    internal IReadOnlyList<double> Angles => AnglesDegrees is { Count: > 0 } some ? [.. some.Select(a => ((a % 360) + 360) % 360).Distinct().Order()] : [0, 90, 180, 270];

    /// <summary>Whether a rectangle may lie on its side.</summary>
    internal bool MayTurn => AnyAngle || Angles.Any(a => a is 90 or 270);
}
