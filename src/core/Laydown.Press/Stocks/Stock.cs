using Laydown.Measures;

namespace Laydown.Press.Stocks;

/// <summary>A material the shop keeps.</summary>
/// <param name="Id">Stable short name, lower case with hyphens.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Invented">Whether it is invented for the demo.</param>
/// <param name="Kind">Board, blank or roll.</param>
/// <param name="Material">Material in plain words, such as <c>acrylic, cast</c>.</param>
/// <param name="WidthMm">Width, mm; for a roll its width.</param>
/// <param name="LengthMm">Length, mm; for a roll the length on it.</param>
/// <param name="ThicknessMm">Nominal thickness, mm.</param>
/// <param name="ThicknessToleranceMm">What the thickness may differ from nominal, mm either way.</param>
/// <param name="BowMm">Bow allowed over the longer side, mm.</param>
/// <param name="WeightGPerM2">Mass of a square metre, g.</param>
/// <param name="YoungGpa">Stiffness in bending (effective, for sandwiches), GPa; 0 for a roll.</param>
/// <param name="GrowthPpmPerK">Thermal growth, 10⁻⁶/K.</param>
/// <param name="MaxTemperatureC">Highest temperature, °C.</param>
/// <param name="Grain">Direction of flutes or grain.</param>
/// <param name="Light">What the bare sheet does with light.</param>
/// <param name="ReflectancePercent">Diffuse reflectance of the bare sheet, percent.</param>
/// <param name="TransmittancePercent">Total transmittance of the bare sheet, percent.</param>
/// <param name="Price">Price of one board or blank, or of one running metre of roll.</param>
/// <param name="OnHand">Boards or blanks in the room; for a roll running metres.</param>
/// <param name="OtherSizeOf">For another size or an offcut of a board the shop keeps, or another width of a roll: that stock's id; orders name that, planning may take this one. Else null.</param>
/// <param name="SpecificHeatJPerKgK">Specific heat, J/(kg·K), 100 to 5000; null where nobody knows, then a low one is taken.</param>
/// <param name="ConductivityWPerMK">Conductivity of heat through the thickness, W/(m·K), 0.01 to 500; null where nobody knows, then a difference of the sides is taken.</param>
/// <param name="ReorderAt">What must be free, or more is ordered: boards or blanks, of a roll metres; null where nobody watches.</param>
/// <param name="OrderTo">Up to how much is ordered then; null for the point itself.</param>
/// <param name="SizeToleranceMm">How far width and length may differ from nominal, mm either way; null where nobody knows.</param>
/// <param name="MaxInkMlPerM2">Most ink on one spot before it curls, cracks or peels, ml/m² (µm of film); null where nobody tried.</param>
public sealed record Stock(
    string Id,
    string Name,
    bool Invented,
    StockKind Kind,
    string Material,
    double WidthMm,
    double LengthMm,
    double ThicknessMm,
    double ThicknessToleranceMm,
    double BowMm,
    double WeightGPerM2,
    double YoungGpa,
    double GrowthPpmPerK,
    double MaxTemperatureC,
    GrainDirection Grain,
    SheetLight Light,
    double ReflectancePercent,
    double TransmittancePercent,
    Money Price,
    int OnHand,
    string? OtherSizeOf = null,
    double? SpecificHeatJPerKgK = null,
    double? ConductivityWPerMK = null,
    int? ReorderAt = null,
    int? OrderTo = null,
    double? SizeToleranceMm = null,
    double? MaxInkMlPerM2 = null)
{
    /// <summary>Width and length as it lies in the rack.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public SizeMm Size => new(WidthMm, LengthMm);
}
