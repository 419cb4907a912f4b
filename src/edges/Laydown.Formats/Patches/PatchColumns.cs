using System.Globalization;
using System.Text.RegularExpressions;

namespace Laydown.Formats.Patches;

/// <summary>Which field of a table of readings holds what; positions from 0, −1 where there is none.</summary>
internal sealed partial class PatchColumns
{
    private static readonly string[] IdNames = ["SAMPLEID", "ID", "PATCHID", "SAMPLENAME", "NAME", "PATCH", "SAMPLELOC", "STRING"];
    private static readonly string[] NoInks = ["PAGE", "ROW", "COLUMN", "COL", "DE", "STRIP", "POS", "POSITION", "INDEX", "DENSITY", "STATUS"];
    private static readonly string[] NoInkStarts = ["SAMPLE", "D_", "LAB_", "LCH_", "XYZ_", "XYY_", "LUV_", "STDEV", "MEAN_", "CHI_SQD", "RGB_", "SPECTRAL"];

    private PatchColumns()
    {
    }

    /// <summary>Name of the patch.</summary>
    public int Id { get; private set; } = -1;

    /// <summary>What stood behind the patch.</summary>
    public int Behind { get; private set; } = -1;

    /// <summary>Inks: position and plain name, in the order of the file.</summary>
    public List<(int Column, string Ink)> Inks { get; } = [];

    /// <summary>L*, a*, b*; empty where they are not all there.</summary>
    public int[] Lab { get; private set; } = [];

    /// <summary>X, Y, Z; empty where they are not all there.</summary>
    public int[] Xyz { get; private set; } = [];

    /// <summary>Bands of the spectrum: position and wavelength, nm, rising.</summary>
    public List<(int Column, int Nm)> Bands { get; private set; } = [];

    /// <summary>Whether the fields say that reflectance is in percent.</summary>
    public bool Percent { get; private set; }

    /// <summary>Whether the table has inks and colour.</summary>
    public bool IsWhole => Inks.Count > 0 && (Lab.Length == 3 || Xyz.Length == 3 || Bands.Count > 1);

    /// <summary>Whether the device is named as red, green and blue.</summary>
    public bool IsRgb { get; private set; }

    /// <summary>Finds the fields of a table.</summary>
    public static PatchColumns Of(PatchTable table)
    {
        string[] names = [.. table.Fields.Select(f => f.Trim().ToUpperInvariant())];
        PatchColumns columns = new();
        bool[] taken = [.. table.Fields.Select(table.SureInks.Contains)];
        columns.FindId(names, taken);
        columns.FindBehind(names, taken);
        columns.Lab = FindThree(names, taken, ["LAB_L", "LAB_A", "LAB_B"], ["L", "A", "B"], ["L*", "A*", "B*"], ["CIE_L", "CIE_A", "CIE_B"]);
        columns.Xyz = FindThree(names, taken, ["XYZ_X", "XYZ_Y", "XYZ_Z"], ["CIE_X", "CIE_Y", "CIE_Z"], ["X", "Y", "Z"]);
        columns.FindBands(table, names, taken);
        columns.FindInks(table, names, taken);
        columns.IsRgb = names.Any(n => n is "RGB_R") || (names.Contains("R") && names.Contains("G") && !names.Contains("C"));
        return columns;
    }

    // Three fields beside one another: a lone Y is an ink, and in C, M, Y, K, X, Y, Z the second Y is the colour.
    private static int[] FindThree(string[] names, bool[] taken, params string[][] spellings)
    {
        foreach (string[] three in spellings)
        {
            for (int at = 0; at + 2 < names.Length; at++)
            {
                if (!names.AsSpan(at, 3).SequenceEqual(three))
                    continue;
                taken.AsSpan(at, 3).Fill(true);
                return [at, at + 1, at + 2];
            }
        }

        // Names that can mean nothing else may stand anywhere.
        int[] apart = [.. spellings[0].Select(name => Array.IndexOf(names, name))];
        if (apart.Contains(-1))
            return [];
        foreach (int column in apart)
            taken[column] = true;
        return apart;
    }

    private void FindId(string[] names, bool[] taken)
    {
        string[] bare = [.. names.Select(n => n.Replace("_", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal))];
        Id = IdNames.Select(name => Array.IndexOf(bare, name)).FirstOrDefault(at => at >= 0, -1);
        if (Id >= 0)
            taken[Id] = true;
    }

    private void FindBehind(string[] names, bool[] taken)
    {
        Behind = Array.FindIndex(names, n => n is "SAMPLE_BACKING" or "BACKING" or "BEHIND");
        if (Behind >= 0)
            taken[Behind] = true;
    }

    private void FindBands(PatchTable table, string[] names, bool[] taken)
    {
        List<(int Column, int Nm)> bands = [];
        for (int at = 0; at < names.Length; at++)
        {
            if (taken[at])
                continue;
            if (Band().Match(names[at]) is { Success: true } named)
            {
                bands.Add((at, int.Parse(named.Groups[2].Value, CultureInfo.InvariantCulture)));
                Percent |= names[at].Contains("PCT", StringComparison.Ordinal);
            }
            else if (names[at] == "SPECTRAL_NM" && at + 1 < names.Length && names[at + 1] is "SPECTRAL_DEC" or "SPECTRAL_PCT" && NmOf(table, at) is { } nm)
            {
                // The wavelength stands in the data before each value.
                bands.Add((at + 1, nm));
                Percent |= names[at + 1] == "SPECTRAL_PCT";
                taken[at] = true;
            }
        }

        bands.ForEach(b => taken[b.Column] = true);
        Bands = [.. bands.OrderBy(b => b.Nm)];
    }

    // The wavelength of a column that repeats it in every row; null where it changes or is none.
    private static int? NmOf(PatchTable table, int column)
    {
        string first = table.Rows.Count > 0 ? table.Rows[0].Values[column] : "";
        return FileNumber.TryRead(first, out double nm) && nm is >= 200 and <= 2500 && nm == Math.Round(nm) && table.Rows.All(r => r.Values[column] == first)
            ? (int)nm
            : null;
    }

    private void FindInks(PatchTable table, string[] names, bool[] taken)
    {
        for (int at = 0; at < names.Length; at++)
        {
            string field = table.Fields[at].Trim();
            if (table.SureInks.Contains(field))
                Inks.Add((at, InkWords.Known(field) ?? field));
            else if (!taken[at] && InkWords.OfField(field, table.InkLetters) is { } ink)
                Inks.Add((at, ink));
        }

        // Names of nobody's making, such as a spot ink, count as inks where they are numbers before the colour.
        int colour = Lab.Concat(Xyz).Concat(Bands.Select(b => b.Column)).DefaultIfEmpty(names.Length).Min();
        for (int at = 0; at < colour && at < names.Length; at++)
        {
            bool free = !taken[at] && !Inks.Any(i => i.Column == at) && names[at].Length > 0 && !NoInks.Contains(names[at])
                && !NoInkStarts.Any(n => names[at].StartsWith(n, StringComparison.Ordinal));
            if (free && table.Rows.Count > 0 && FileNumber.TryRead(table.Rows[0].Values[at], out _))
                Inks.Add((at, table.Fields[at].Trim()));
        }

        Inks.Sort((a, b) => a.Column.CompareTo(b.Column));
    }

    [GeneratedRegex("^(SPECTRAL_?|SPECTRUM_?|SPEC_?|REFLECTANCE_?|R_?)?(?:DEC_?|PCT_?)?(?:NM_?)?([2-9][0-9]{2})(?:_?NM)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Band();
}
