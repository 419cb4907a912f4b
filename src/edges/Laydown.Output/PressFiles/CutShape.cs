using Laydown.Measures;

namespace Laydown.Output.PressFiles;

/// <summary>One line of a cut drawing, mm of the sheet.</summary>
/// <param name="Step">What is done along it, as in [ISO19593-1]; <see cref="Register"/> for discs a camera looks for.</param>
/// <param name="Points">Its corners; one for the centre of a hole, an eyelet or a disc.</param>
/// <param name="Closed">Whether it returns to its first corner.</param>
/// <param name="DiameterMm">Diameter of a disc, mm; 0 for all else.</param>
internal sealed record CutShape(string Step, IReadOnlyList<PointMm> Points, bool Closed, double DiameterMm = 0)
{
    /// <summary>Name of the group of discs.</summary>
    public const string Register = "Register";

    /// <summary>Half the length of the cross that stands for a hole, mm.</summary>
    public const double CrossMm = 3;
}
