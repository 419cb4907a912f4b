using Laydown.Plan.Runs;
using Laydown.Press.Machines;

namespace Laydown.Plan.Upkeep;

/// <summary>Cautions of care tasks, top-ups and long stops.</summary>
/// <remarks>Gloves: [HSE-RR525]. The rest: common practice, no source.</remarks>
public static class CareCautions
{
    private const string Ink = "Uncured ink irritates and can sensitise skin for good: nitrile gloves of 0.4 mm, splash glasses; wash with soap and water, never with solvent. Wipes and waste ink are hazardous waste.";
    private const string LampsOff = "Lamps off and cold, cover closed against daylight: ink cures in stray light.";
    private const string Still = "Carriage parked and locked, drive off: nobody else starts the press meanwhile.";
    private const string Fluid = "Flush and storage fluids: read the data sheet, air the room, closed bins, no flame or spark near.";

    /// <summary>Cautions of a care task, the rule over them last.</summary>
    public static IReadOnlyList<string> Of(CareKind kind) => kind switch
    {
        CareKind.NozzleCheck => ["Guards shut while the pattern prints; never look into the lamps.", Cautions.Rule],
        CareKind.Clean => [Ink, LampsOff, Still, Fluid, Cautions.Rule],
        CareKind.Agitate or CareKind.Circulate => [Ink, Cautions.Rule],
        CareKind.Filter or CareKind.WasteTank => [Ink, Still, Cautions.Rule],
        CareKind.Lamps => ["Lamps off, unplugged and cold before their windows are wiped; measure with the shield in place, never look into them.", Still, Cautions.Rule],
        CareKind.StopDevices => ["Stand clear of carriage and belt while the stops are tried; a press whose stop fails stays off.", Cautions.Rule],
        _ => [Ink, Still, Cautions.Rule],
    };

    /// <summary>Cautions of topping a tank up.</summary>
    /// <param name="whilePrinting">Whether the press prints meanwhile.</param>
    public static IReadOnlyList<string> OfTopUp(bool whilePrinting) => whilePrinting
        ? [Ink, "The press prints meanwhile: keep clear of carriage and belt, guards shut.", Cautions.Rule]
        : [Ink, Cautions.Rule];

    /// <summary>Cautions of filling lines with storage fluid and back.</summary>
    public static IReadOnlyList<string> OfLongStop() => [Ink, Fluid, LampsOff, Still, Cautions.Rule];
}
