using Laydown.Press.Machines;

namespace Laydown.Plan.Runs;

/// <summary>How visible bands will be in a mode, as figured by whoever knows passes and eyes; planning only weighs it.</summary>
/// <param name="VisibleDeltaL">Peak of what the eye sees of bands, L*, not under 0.</param>
/// <param name="MostDeltaL">Bands up to that are borne, L*.</param>
/// <param name="Because">The main cause, as the rest of a sentence, such as <c>a sheet that stands a little off at each scan</c>.</param>
public sealed record BandScore(double VisibleDeltaL, double MostDeltaL, string Because)
{
    /// <summary>Figures the bands of a mode on a press for a demand; null where the press says too little to tell.</summary>
    /// <remarks>Pure: the same arguments give the same score.</remarks>
    public delegate BandScore? Source(PressDescription press, Mode mode, ModeDemand demand);

    /// <summary>Whether such bands are borne.</summary>
    public bool IsBorne => VisibleDeltaL <= MostDeltaL;
}
