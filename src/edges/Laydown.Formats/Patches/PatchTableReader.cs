using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Measures;

namespace Laydown.Formats.Patches;

/// <summary>Understands a table of readings: units, inks, colour; refuses what cannot be taken, with line and field.</summary>
/// <param name="table">The table, all of it still text.</param>
internal sealed class PatchTableReader(PatchTable table)
{
    private readonly PatchColumns columns = PatchColumns.Of(table);
    private readonly List<InputFault> faults = [];
    private SpectralWeights? weights;
    private int more;

    /// <summary>The readings, or why they are refused.</summary>
    public Reading<ReadingSet> Read()
    {
        if (Unfit() is { } fault)
            return Reading.Refused<ReadingSet>(fault);

        // Every value that is needed as a number, or a fault that names line and field.
        double[][] inks = Numbers([.. columns.Inks.Select(i => i.Column)]);
        double[][] colour = Numbers(ColourColumns());
        CheckIds(inks);
        if (faults.Count > 0)
            return Refused();

        // The units are told from all values together.
        return UnitChoice.Inks(table.File, [.. columns.Inks.Select((ink, i) => (ink.Ink, inks.Max(row => row[i])))])
            .Then(inkUnit => ColourUnit(colour).Then(unit => Whole(inks, inkUnit, colour, unit)));
    }

    private InputFault? Unfit()
    {
        string fields = string.Join(' ', table.Fields.Take(12));
        if (table.Rows.Count == 0)
            return Fault("data", "no row", "readings of at least one patch");
        if (table.Rows.Count > PatchLimits.Rows)
            return Fault("data", Invariant($"{table.Rows.Count} rows"), Invariant($"at most {PatchLimits.Rows}"));
        if (columns.IsRgb)
            return Fault("fields", fields, "inks of a press, not red, green and blue");
        if (columns.Inks.Count == 0)
            return Fault("fields", fields, "fields of inks, such as CMYK_C or 7CLR_1");
        if (columns.Inks.GroupBy(i => i.Ink, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice)
            return Fault("fields", Invariant($"{twice.Key} {twice.Count()} times"), "each ink once");
        if (columns.Inks.Count > 15)
            return Fault("fields", Invariant($"{columns.Inks.Count} inks"), "at most 15 inks");
        if (!columns.IsWhole)
            return Fault("fields", fields, "colour: LAB_L, LAB_A, LAB_B or XYZ_X, XYZ_Y, XYZ_Z or a spectrum");
        return UnfitBands();
    }

    private InputFault? UnfitBands()
    {
        if (columns.Bands.Count < 2)
            return null;
        int first = columns.Bands[0].Nm, step = columns.Bands[1].Nm - first, last = columns.Bands[^1].Nm;
        for (int band = 1; band < columns.Bands.Count; band++)
        {
            if (columns.Bands[band].Nm - columns.Bands[band - 1].Nm != step || step < 1)
                return Fault("spectrum", Invariant($"band {columns.Bands[band].Nm} nm after {columns.Bands[band - 1].Nm} nm, step {step} nm"), "even steps, each band once");
        }

        return ReadingColour.Covers(first, step, columns.Bands.Count)
            ? null
            : Fault("spectrum", Invariant($"{first} nm to {last} nm every {step} nm"), "at least 400 nm to 700 nm, every 1 nm to 20 nm");
    }

    private int[] ColourColumns() => columns.Bands.Count > 1 ? [.. columns.Bands.Select(b => b.Column)]
        : columns.Lab.Length == 3 ? columns.Lab : columns.Xyz;

    private double[][] Numbers(int[] wanted) => [.. table.Rows.Select(row => wanted.Select(column => Number(row, column)).ToArray())];

    private double Number(PatchRow row, int column)
    {
        if (FileNumber.TryRead(row.Values[column], out double value))
            return value;
        Tell(Fault(Place(row, column), row.Values[column].Trim().Length == 0 ? "nothing" : row.Values[column], "a number"));
        return 0;
    }

    // The same id twice is the same patch read twice: then the inks must be the same.
    private void CheckIds(double[][] inks)
    {
        if (columns.Id < 0)
            return;
        Dictionary<string, int> seen = new(StringComparer.Ordinal);
        for (int i = 0; i < table.Rows.Count; i++)
        {
            string id = IdOf(i);
            if (id.Length == 0)
                Tell(Fault(Place(table.Rows[i], columns.Id), "nothing", "a name of the patch"));
            else if (!seen.TryAdd(id, i) && !inks[i].SequenceEqual(inks[seen[id]]))
                Tell(Fault(Place(table.Rows[i], columns.Id), Invariant($"patch {id} with other inks than in {table.RowWord} {table.Rows[seen[id]].Line}"), "one set of inks for each id"));
            foreach (double ink in inks[i].Where(v => v < 0))
                Tell(Fault(Invariant($"{table.RowWord} {table.Rows[i].Line}, ink"), Invariant($"{ink}"), "0 or more"));
        }
    }

    private Reading<double> ColourUnit(double[][] colour)
    {
        if (columns.Bands.Count > 1)
            return UnitChoice.Reflectance(table.File, colour.Max(row => row.Max()), columns.Percent);
        if (columns.Lab.Length == 3)
            return Reading.Of(1.0);
        return Reading.Of(colour.Max(row => row[1]) <= 1.6 ? 100.0 : 1.0);
    }

    private Reading<ReadingSet> Whole(double[][] inks, double inkUnit, double[][] colour, double unit)
    {
        List<Patch> patches = new(inks.Length);
        int clamped = 0;
        for (int i = 0; i < inks.Length; i++)
        {
            double[] parts = [.. inks[i].Select(v => Part(i, v * inkUnit))];
            Patch patch = columns.Bands.Count > 1 ? Spectral(i, parts, colour[i], unit, ref clamped) : Plain(i, parts, colour[i], unit);
            patches.Add(patch with { Behind = BehindOf(i) });
        }

        if (faults.Count > 0)
            return Refused();
        List<string> notes = [.. table.Notes, inkUnit == 1 ? "inks given in parts of one" : "inks given in percent"];
        if (columns.Bands.Count > 1 && unit != 1)
            notes.Add("reflectance given in percent");
        if (clamped > 0)
            notes.Add(Invariant($"{clamped} values of reflectance a little under 0 (down to {-UnitChoice.Noise}) taken as 0"));
        return Reading.Of(new ReadingSet(table.Name, [.. columns.Inks.Select(i => i.Ink)], table.Measured, patches) { Notes = notes });
    }

    // A column of its own goes before what is said for the whole file.
    private Behind BehindOf(int row)
    {
        if (columns.Behind < 0)
            return BehindWords.Read(table.Measured.Backing) is var said && said == Behind.Unsaid ? BehindWords.Read(ForGeometry()) : said;
        string word = table.Rows[row].Values[columns.Behind];
        Behind behind = BehindWords.Read(word);
        if (behind == Behind.Unsaid && word.Trim().Length > 0)
            Tell(Fault(Place(table.Rows[row], columns.Behind), word, "black, white or lamp"));
        return behind;
    }

    // Only transmission is told from what a file says of its geometry.
    private string ForGeometry() => table.Measured.Statement.Contains("transmi", StringComparison.OrdinalIgnoreCase) ? "transmission" : "";

    private double Part(int row, double part)
    {
        if (part < 0)
            Tell(Fault(Invariant($"{table.RowWord} {table.Rows[row].Line}, ink"), Invariant($"{part}"), "0 or more"));
        return Math.Clamp(part, 0, 1);
    }

    private Patch Spectral(int row, double[] inks, double[] given, double unit, ref int clamped)
    {
        double[] values = new double[given.Length];
        for (int band = 0; band < values.Length; band++)
        {
            double value = given[band] * unit;
            if (value < -UnitChoice.Noise)
                Tell(Fault(Place(table.Rows[row], columns.Bands[band].Column), Invariant($"reflectance {value}"), Invariant($"{-UnitChoice.Noise} (noise) or more")));
            if (value < 0)
                clamped++;
            values[band] = Math.Max(value, 0);
        }

        Spectrum spectrum = new(columns.Bands[0].Nm, columns.Bands[1].Nm - columns.Bands[0].Nm, values);
        weights ??= ReadingColour.WeightsFor(spectrum.FirstNm, spectrum.StepNm, values.Length);
        return new(IdOf(row), inks, Lab.From(weights.Of(values), ReadingColour.White), spectrum);
    }

    private Patch Plain(int row, double[] inks, double[] given, double unit)
    {
        if (columns.Lab.Length == 3)
        {
            if (!(given[0] is >= -1 and <= 120 && Math.Abs(given[1]) <= 200 && Math.Abs(given[2]) <= 200))
                Tell(Fault(Place(table.Rows[row], columns.Lab[0]), Invariant($"Lab {given[0]}, {given[1]}, {given[2]}"), "L* 0 to 120, a* and b* −200 to 200"));
            return new(IdOf(row), inks, new(given[0], given[1], given[2]), null);
        }

        Xyz xyz = new(given[0] * unit, given[1] * unit, given[2] * unit);
        if (!(xyz.X is >= 0 and <= 250 && xyz.Y is >= 0 and <= 250 && xyz.Z is >= 0 and <= 250))
            Tell(Fault(Place(table.Rows[row], columns.Xyz[0]), Invariant($"XYZ {xyz.X}, {xyz.Y}, {xyz.Z}"), "0 to 250, the perfect diffuser having Y = 100"));
        return new(IdOf(row), inks, Lab.From(xyz, ReadingColour.White), null);
    }

    private string IdOf(int row) => columns.Id < 0 ? Invariant($"{row + 1}") : table.Rows[row].Values[columns.Id].Trim();

    private string Place(PatchRow row, int column) => Invariant($"{table.RowWord} {row.Line}, {table.Fields[column]}");

    private InputFault Fault(string field, string found, string wanted) => new(table.File, null, field, found, wanted);

    private void Tell(InputFault fault)
    {
        if (faults.Count < PatchLimits.Faults)
            faults.Add(fault);
        else
            more++;
    }

    private Reading<ReadingSet> Refused() => Reading.Refused<ReadingSet>(
        more == 0 ? faults : [.. faults, Fault("data", Invariant($"{more} more faults like these"), "none")]);
}
