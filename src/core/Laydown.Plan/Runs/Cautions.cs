using Laydown.Press.Handling;
using Laydown.Press.Machines;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>Cautions that belong to setting up and printing a run.</summary>
/// <remarks>Limit of UV-A for the eye: [EU2006-25]. Thickness of gloves: [HSE-RR525]. The rest: common practice, no source.</remarks>
public static class Cautions
{
    /// <summary>Mass from which two people lift, kg: the limit of one person for a small sheet is 10.5 kg [NIOSH1994]; own rule, rounded down.</summary>
    public const double TwoPeopleKg = 10;

    /// <summary>Area of a stiff sheet from which two people lift, m²; own rule.</summary>
    public const double TwoPeopleM2 = 1.2;

    /// <summary>What rules over every caution shown.</summary>
    public const string Rule = "The maker's manual, local codes and licensed trades rule.";

    /// <summary>Caution for every piece with a lamp behind it.</summary>
    public const string Lit = "Lamp boxes and mains: box, supply and fixing by a licensed electrician to the local code; mind heat and access. Use the real lamp for sign-off.";

    /// <summary>The cautions of a run, the rule over them last.</summary>
    public static IReadOnlyList<string> Of(RunRequest request, double sheetMassKg)
    {
        Stock stock = request.Stock;
        List<string> cautions =
        [
            Uv(request.Press.Lamp),
            "Moving carriage and belt crush and draw in: keep hands, hair, sleeves and gloves away, guards shut; test the stop devices each day.",
            "Uncured ink irritates and can sensitise skin for good: nitrile gloves of 0.4 mm, eye protection when filling tanks; wash with soap and water, never with solvent. Wipes and waste ink are hazardous waste.",
            "Flush fluids: read the data sheet, air the room, closed bins, no flame or spark near.",
        ];
        if (stock.Kind == StockKind.Roll)
            cautions.Add(Invariant($"The roll weighs up to {sheetMassKg:0} kg: {(sheetMassKg > TwoPeopleKg ? "two people or a lift" : "lift with a straight back")}; feet clear of it, both ends locked."));
        else if (NeedsTwo(stock, sheetMassKg))
            cautions.Add(Invariant($"Each sheet weighs {sheetMassKg:0.0} kg and measures {stock.Size.AreaM2:0.0} m²: two people lift and lay it. The limit for one is {Lifting.OneSheetKg:0.0} kg held close, less for a wide sheet."));
        if (stock.Kind != StockKind.Roll)
            cautions.Add("Edges and corners cut: gloves against cuts when handling sheets, away from the moving belt.");
        if (IsFilmed(stock))
            cautions.Add("Peeling film and handling plastic build up static: ionise, earth, keep solvent vapour away, wipe dust at the press.");
        if (request.Stack.Lit)
            cautions.Add(Lit);
        cautions.Add(Rule);
        return cautions;
    }

    /// <summary>Whether two people lift a board or blank.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="sheetMassKg">Mass of one, kg.</param>
    public static bool NeedsTwo(Stock stock, double sheetMassKg)
    {
        ArgumentNullException.ThrowIfNull(stock);
        return sheetMassKg > TwoPeopleKg || stock.Size.AreaM2 > TwoPeopleM2;
    }

    private static string Uv(Lamp lamp)
    {
        double wPerM2 = lamp.IrradianceWPerCm2 * 1e4;
        return Invariant($"UV lamps ({lamp.WavelengthNm} nm, {lamp.IrradianceWPerCm2:0.#} W/cm²): bare, they pass the day's limit for the eye, 10 kJ/m², in {1e4 / wPerM2:0.00} s. Never look into them, never defeat a shield.");
    }

    private static bool IsFilmed(Stock stock) =>
        new[] { "acrylic", "PVC", "polycarbonate", "PETG", "film", "banner", "polypropylene", "polyester" }.Any(m => stock.Material.Contains(m, StringComparison.OrdinalIgnoreCase));
}
