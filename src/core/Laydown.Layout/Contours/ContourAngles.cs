namespace Laydown.Layout.Contours;

/// <summary>The angles a contour may be turned to, counter-clockwise, degrees.</summary>
/// <remarks>Grain, flute, or a direction of the print bar some; a router's plain parts may lie at any.</remarks>
public sealed record ContourAngles
{
    private ContourAngles(IReadOnlyList<double> degrees, bool any)
    {
        Degrees = degrees;
        Any = any;
    }

    /// <summary>Only as drawn.</summary>
    public static ContourAngles AsDrawn { get; } = Of(0);

    /// <summary>As drawn or upside down.</summary>
    public static ContourAngles HalfTurns { get; } = Of(0, 180);

    /// <summary>All quarter turns.</summary>
    public static ContourAngles QuarterTurns { get; } = Of(0, 90, 180, 270);

    /// <summary>Every angle; the search tries them in steps of <see cref="StepOfAnyDegrees"/>.</summary>
    public static ContourAngles Free { get; } = new([.. Enumerable.Range(0, 360).Select(d => d * StepOfAnyDegrees)], any: true);

    /// <summary>Step between two angles of a contour that may lie at any, degrees.</summary>
    public static double StepOfAnyDegrees => 1;

    /// <summary>The angles, 0 up to under 360 degrees, growing; at least one.</summary>
    public IReadOnlyList<double> Degrees { get; }

    /// <summary>Whether every angle is allowed.</summary>
    public bool Any { get; }

    /// <summary>A set of angles, degrees; any order, whole turns are taken off.</summary>
    /// <exception cref="ArgumentException">No angle, or one that is no number.</exception>
    public static ContourAngles Of(params IReadOnlyList<double> degrees)
    {
        ArgumentNullException.ThrowIfNull(degrees);
        if (degrees.Count == 0 || degrees.Any(d => !double.IsFinite(d)))
            throw new ArgumentException("Angles: wanted at least one, all of them numbers of degrees.", nameof(degrees));

        return new([.. degrees.Select(d => ((d % 360) + 360) % 360).Distinct().Order()], any: false);
    }

    /// <inheritdoc/>
    public bool Equals(ContourAngles? other) => other is not null && Any == other.Any && Degrees.SequenceEqual(other.Degrees);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Any, Degrees.Count, Degrees[0]);
}
