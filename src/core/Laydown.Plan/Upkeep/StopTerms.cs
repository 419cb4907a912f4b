using Laydown.Measures;

namespace Laydown.Plan.Upkeep;

/// <summary>What a long stop is decided by: how long lines may stand, and what keeping or storing them takes.</summary>
/// <param name="Lines">Lines that may not stand for ever.</param>
/// <param name="ShortRunMinutes">A short run that keeps the lines alive, minutes, over 0.</param>
/// <param name="ShortRunInkCents">Ink of a short run, cents.</param>
/// <param name="LabourPerHour">An hour of work.</param>
/// <param name="PressPerHour">An hour of the press within shifts.</param>
/// <param name="VisitMinutes">What a visit outside the shifts is paid beyond the short run, minutes.</param>
public sealed record StopTerms(IReadOnlyList<StopLine> Lines, int ShortRunMinutes, long ShortRunInkCents, Money LabourPerHour, Money PressPerHour, double VisitMinutes)
{
    /// <summary>Minutes of work in money, to the cent.</summary>
    public Money Labour(double minutes) => Money.FromUnits(LabourPerHour.Units * (decimal)minutes / 60m);

    /// <summary>Minutes of the press in money, to the cent.</summary>
    public Money Press(double minutes) => Money.FromUnits(PressPerHour.Units * (decimal)minutes / 60m);

    /// <summary>Work of a short run: outside the shifts with the visit.</summary>
    public Money ShortRunLabour(bool inShift) => Labour(ShortRunMinutes + (inShift ? 0 : VisitMinutes));

    /// <summary>A short run in money: ink and work, and the press within shifts.</summary>
    public Money ShortRun(bool inShift) => new Money(ShortRunInkCents) + ShortRunLabour(inShift) + (inShift ? Press(ShortRunMinutes) : default);
}
