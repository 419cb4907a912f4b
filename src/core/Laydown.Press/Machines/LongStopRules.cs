using Laydown.Measures;

namespace Laydown.Press.Machines;

/// <summary>What a press needs when it stands longer than it may.</summary>
/// <remarks>The defaults are common practice without a source; the maker's manual rules.</remarks>
/// <param name="LimitHours">Longest the lines may stand with ink, h; longer needs storage fluid.</param>
/// <param name="WhiteLimitHours">Longest a line of white that does not circulate may stand, h.</param>
/// <param name="FluidMlPerLine">Storage fluid for one line, ml.</param>
/// <param name="FluidPerLitre">Price of a litre of it; null counts as nothing.</param>
/// <param name="FillMinutesPerLine">Emptying a line and filling it with fluid, minutes.</param>
/// <param name="BackMinutesPerLine">Flushing the fluid out and filling with ink again, minutes.</param>
/// <param name="InkLostMlPerLine">Ink lost by filling a line again, ml.</param>
/// <param name="ShortRunMinutes">A short run that keeps the lines alive, with warming up, minutes.</param>
/// <param name="ShortRunInkMlPerLine">Ink of a short run, ml for each line.</param>
/// <param name="VisitMinutes">What a visit outside the shifts is paid on top of the short run, minutes.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record LongStopRules(
    double LimitHours = 60,
    double WhiteLimitHours = 24,
    double FluidMlPerLine = 120,
    Money? FluidPerLitre = null,
    double FillMinutesPerLine = 6,
    double BackMinutesPerLine = 8,
    double InkLostMlPerLine = 25,
    double ShortRunMinutes = 30,
    double ShortRunInkMlPerLine = 1.5,
    double VisitMinutes = 60,
    string Source = FigureSource.CommonPractice);
