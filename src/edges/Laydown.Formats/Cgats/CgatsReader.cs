using System.Text.RegularExpressions;
using Laydown.Colour.Readings;
using Laydown.Formats.Patches;
using Laydown.Measures;

namespace Laydown.Formats.Cgats;

/// <summary>Reads CGATS.17 text [CGATS17] as it is found: any line ends, spaces or tabs, quotes, comments, a first line that lies.</summary>
/// <remarks>
/// Of several tables the first with inks and colour is taken. Encoding: by byte-order mark, else UTF-8 where valid, else Latin-1.
/// Spectra go before Lab, Lab before XYZ: the XYZ columns of public files are rounded. At most 64 MiB and 200 000 rows.
/// </remarks>
public static partial class CgatsReader
{
    private static readonly string[] Said = ["MEASUREMENT_SOURCE", "MEASUREMENT_GEOMETRY", "ILLUMINANT", "OBSERVER", "FILTER", "POLARIZATION", "PRINT_CONDITIONS"];

    /// <summary>The readings of a file, or why they cannot be taken.</summary>
    /// <param name="file">Name of the file without its folder.</param>
    /// <param name="bytes">The whole file.</param>
    public static Reading<ReadingSet> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        if (PatchLimits.Refuse(file, bytes.Length) is { } size)
            return Reading.Refused<ReadingSet>(size);
        if (FileText.Decode(bytes.Span) is not { } text)
            return Refused(file, "file", "bytes that are no text", "CGATS.17 text");

        CgatsTables tables = new();
        foreach ((int number, string line) in FileText.Lines(text))
            tables.Take(number, line);
        return Choose(file, tables.All);
    }

    private static Reading<ReadingSet> Choose(string file, List<CgatsTable> tables)
    {
        if (tables.Count == 0)
            return Refused(file, "BEGIN_DATA", "none", "a table of readings");
        if (tables.Find(t => !t.IsClosed) is { } cut)
            return Refused(file, Invariant($"BEGIN_DATA in line {cut.Line}"), Invariant($"{cut.Data.Count} rows and no END_DATA"), "END_DATA: the file is cut off");

        // One table is read whatever it holds, so that its own faults are told; of several, the first with inks and colour.
        List<CgatsTable> fit = tables.Count == 1 ? tables : tables.FindAll(t => PatchColumns.Of(Bare(file, t)).IsWhole);
        if (fit.Count == 0)
            return Refused(file, "BEGIN_DATA_FORMAT", Invariant($"{tables.Count} tables, none with inks and colour"), "one table with fields of inks and of colour");
        string[] notes = tables.Count == 1 ? [] : [Invariant($"of {tables.Count} tables, {fit.Count} with inks and colour, the one in line {fit[0].Line} was taken")];
        return ReadTable(file, fit[0], notes);
    }

    private static Reading<ReadingSet> ReadTable(string file, CgatsTable table, IReadOnlyList<string> notes)
    {
        if (table.Fields.Count is 0 or > PatchLimits.Fields)
            return Refused(file, "BEGIN_DATA_FORMAT", Invariant($"{table.Fields.Count} fields"), Invariant($"1 to {PatchLimits.Fields} fields before BEGIN_DATA"));
        if (table.Data.Count > PatchLimits.Rows)
            return Refused(file, "BEGIN_DATA", Invariant($"{table.Data.Count} rows"), Invariant($"at most {PatchLimits.Rows}"));
        (List<PatchRow> rows, PatchRow? misfit) = table.Rows();
        if (misfit is not null)
            return Refused(file, Invariant($"line {misfit.Line}"), Invariant($"{misfit.Values.Count} values"), Invariant($"{table.Fields.Count}, one for each field"));

        // Fewer rows than promised are rows lost; more are told.
        int? promised = table.Keywords.TryGetValue("NUMBER_OF_SETS", out string? sets) && FileNumber.TryRead(sets, out double n) ? (int)n : null;
        if (promised > rows.Count)
            return Refused(file, "NUMBER_OF_SETS", Invariant($"{promised} promised, {rows.Count} rows"), "all rows: the file is cut off or the number is wrong");
        string? count = promised == rows.Count ? null
            : promised is null ? Invariant($"NUMBER_OF_SETS missing; {rows.Count} rows found") : Invariant($"NUMBER_OF_SETS says {promised}; {rows.Count} rows found and taken");
        PatchTable whole = Bare(file, table) with { Rows = rows, Notes = count is null ? notes : [.. notes, count] };
        return OtherLight(file, table, whole) ?? new PatchTableReader(whole).Read();
    }

    // Lab and XYZ under another light or observer cannot be taken; a spectrum can.
    private static Reading<ReadingSet>? OtherLight(string file, CgatsTable table, PatchTable whole)
    {
        if (PatchColumns.Of(whole).Bands.Count > 1)
            return null;
        if (table.Keywords.TryGetValue("ILLUMINANT", out string? light) && light.Length > 0 && !light.Contains("D50", StringComparison.OrdinalIgnoreCase)
            && !light.Contains("5000", StringComparison.Ordinal))
            return Refused(file, "ILLUMINANT", light, "D50, or spectra");
        return table.Keywords.TryGetValue("OBSERVER", out string? eye) && eye.Contains("10", StringComparison.Ordinal)
            ? Refused(file, "OBSERVER", eye, "2 degree, or spectra")
            : null;
    }

    private static PatchTable Bare(string file, CgatsTable table)
    {
        string Value(string keyword) => table.Keywords.GetValueOrDefault(keyword, "");
        string name = Value("DESCRIPTOR") is { Length: > 0 } descriptor ? descriptor : Value("FILE_DESCRIPTOR");
        string said = string.Join("; ", Said.Where(k => Value(k).Length > 0).Select(k => Invariant($"{k} {Value(k)}")));
        string condition = Condition().Match(Value("MEASUREMENT_CONDITION") + ' ' + Value("FILTER") + ' ' + Value("MEASUREMENT_SOURCE") + ' ' + Value("INSTRUMENTATION")).Value;
        MeasuredHow how = new(Value("INSTRUMENTATION"), condition, Value("SAMPLE_BACKING"), Value("CREATED"), said);
        List<PatchRow> first = table.Rows().Rows is { Count: > 0 } rows ? rows[..1] : [];
        return new(file, name.Length > 0 ? name : file, how, Value("COLOR_REP").Split('_')[0], table.Fields, first, []);
    }

    private static Reading<ReadingSet> Refused(string file, string field, string found, string wanted) =>
        Reading.Refused<ReadingSet>(new InputFault(file, null, field, found, wanted));

    [GeneratedRegex(@"\bM[0-3]\b", RegexOptions.CultureInvariant)]
    private static partial Regex Condition();
}
