namespace Laydown.Plan.Orders;

/// <summary>Work after printing in words.</summary>
public static class FinishingWords
{
    /// <summary>A kind, as a cost line names it.</summary>
    public static string Of(FinishingKind kind) => kind switch
    {
        FinishingKind.CutSquare => "cut square",
        FinishingKind.CutContour => "cut to contour",
        FinishingKind.Drill => "drilled holes",
        FinishingKind.Hem => "hem",
        FinishingKind.Eyelet => "eyelets",
        FinishingKind.Tape => "tape",
        FinishingKind.PolePocket => "pockets for poles",
        FinishingKind.Pack => "packing",
        FinishingKind.Laminate => "lamination",
        FinishingKind.Mount => "mounting",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "A kind of finishing without a name."),
    };
}
