using Laydown.Measures;

namespace Laydown.Formats.Dxf;

/// <summary>Brings a drawing to millimetres. [Dxf2000], values of <c>$INSUNITS</c></summary>
internal static class DxfUnits
{
    internal static DxfDrawing Apply(DxfLines lines, int? units)
    {
        (double Mm, string Name)? unit = units switch
        {
            1 => (25.4, "inches"),
            2 => (304.8, "feet"),
            4 => (1, "mm"),
            5 => (10, "cm"),
            6 => (1000, "m"),
            9 => (0.0254, "thousandths of an inch"),
            10 => (914.4, "yards"),
            13 => (0.001, "µm"),
            14 => (100, "dm"),
            null or 0 => null,
            _ => throw new DxfFaultException("$INSUNITS", Invariant($"{units}"), "mm (4), cm (5), m (6), inches (1) or feet (2)"),
        };
        List<Finding> findings = [.. lines.Findings];
        if (unit is null)
        {
            findings.Add(new(
                "dxf-units", Severity.Warn, null, null, "The drawing does not say its unit.", units is null ? "no $INSUNITS" : "$INSUNITS 0", "$INSUNITS 4, mm",
                "taken as mm", "Dxf2000"));
        }
        else if (unit.Value.Mm != 1)
        {
            findings.Add(new(
                "dxf-units", Severity.Note, null, null, Invariant($"The drawing is in {unit.Value.Name}."), Invariant($"$INSUNITS {units}"), "mm",
                Invariant($"multiplied by {unit.Value.Mm}"), "Dxf2000"));
        }

        // Tolerances were kept in units of the drawing, so lines are made only now.
        return new(lines.Contours(unit?.Mm ?? 1), findings);
    }
}
