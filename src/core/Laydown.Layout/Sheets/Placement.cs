using System.Text.Json.Serialization;
using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>One piece on one sheet.</summary>
/// <param name="PieceId">Which piece.</param>
/// <param name="Copy">Which of its copies, from 1 over all sheets.</param>
/// <param name="Place">Printed rectangle on the sheet, mm from the sheet's lower left corner.</param>
/// <param name="Turned">Whether it lies on its side: turned by 90° or 270°.</param>
/// <param name="Part">For a panel, the part of the item's printed picture shown; null for the whole.</param>
/// <param name="AngleDegrees">How far it is turned counter-clockwise, degrees: 0, 90, 180 or 270; left out, 90 where it lies on its side, else 0.</param>
/// <param name="Locked">Whether a person put it there, so that no search may move it.</param>
/// <param name="SeamBleedMm">For a panel that butts its neighbours, what it shows of them beyond each seam, contained in <paramref name="Part"/>, mm: trimmed off at the seam; 0 for none.</param>
/// <param name="BackUp">Whether it lies with its back toward the face of the sheet that is printed first; its angle is that of the back's picture then.</param>
public sealed record Placement(
    string PieceId, int Copy, RectMm Place, bool Turned, RectMm? Part = null, double AngleDegrees = 0, bool Locked = false,
    double SeamBleedMm = 0, bool BackUp = false)
{
    /// <summary>How far it is turned counter-clockwise, degrees: 0, 90, 180 or 270.</summary>
    public double AngleDegrees { get; init; } = Taken(AngleDegrees, Turned);

    /// <summary>The same in quarters of a turn counter-clockwise, 0 to 3.</summary>
    [JsonIgnore]
    public int QuarterTurns => (int)AngleDegrees / 90;

    /// <summary>For a panel, the part of the picture it shows up to its seams; null for the whole.</summary>
    /// <param name="picture">Size of the whole printed picture, mm: its own edges are no seams.</param>
    public RectMm? PartToSeams(SizeMm picture)
    {
        if (Part is not { } part || SeamBleedMm <= 0)
            return Part;
        double left = part.XMm > 1e-6 ? part.XMm + SeamBleedMm : part.XMm, low = part.YMm > 1e-6 ? part.YMm + SeamBleedMm : part.YMm;
        double right = part.RightMm < picture.WidthMm - 1e-6 ? part.RightMm - SeamBleedMm : part.RightMm;
        double top = part.TopMm < picture.HeightMm - 1e-6 ? part.TopMm - SeamBleedMm : part.TopMm;
        return new(left, low, Math.Max(0, right - left), Math.Max(0, top - low));
    }

    // Layouts written before angles were kept say only whether a piece lies on its side.
    private static double Taken(double angle, bool turned) => (angle, turned) switch
    {
        (0, true) => 90,
        (0 or 180, false) or (90 or 270, true) => angle,
        _ => throw new ArgumentException(
            Invariant($"Placement: found {angle}°, {(turned ? "" : "not ")}on its side; wanted 0 or 180 upright, 90 or 270 on its side."), nameof(angle)),
    };
}
