using System.Globalization;

namespace Laydown.Instances.Sequences;

/// <summary>An instance in the published form: jobs on one machine with a set-up between any two, weighted lateness to be least.</summary>
/// <param name="Name">Name of the file.</param>
/// <param name="ProcessTimes">Length of each job.</param>
/// <param name="Weights">Weight of each job.</param>
/// <param name="DueDates">Due time of each job.</param>
/// <param name="FirstSetUps">Set-up of each job where it is the first.</param>
/// <param name="SetUps">Set-up from a job (row) to the next (column).</param>
public sealed record SequenceInstance(
    string Name, IReadOnlyList<int> ProcessTimes, IReadOnlyList<int> Weights, IReadOnlyList<int> DueDates, IReadOnlyList<int> FirstSetUps,
    IReadOnlyList<IReadOnlyList<int>> SetUps)
{
    private const string End = ".instance";

    /// <summary>Files of a folder, by the number in their names.</summary>
    public static IReadOnlyList<string> FilesIn(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*" + End).OrderBy(f => Path.GetFileName(f).Length).ThenBy(f => f, StringComparer.Ordinal)];

    /// <summary>Reads one instance.</summary>
    /// <exception cref="InvalidDataException">A section or a set-up is missing, or a line holds no number; the message names file, line, found and wanted.</exception>
    public static SequenceInstance Read(string path)
    {
        string[] lines = File.ReadAllLines(path);
        string name = Path.GetFileName(path);
        int[] titles = [.. new[] { "Process Times:", "Weights:", "Duedates:", "Setup Times:" }.Select(t => Find(lines, t, name))];
        int[] lengths = Column(lines, titles[0], titles[1], name), weights = Column(lines, titles[1], titles[2], name), dues = Column(lines, titles[2], titles[3], name);
        int n = lengths.Length;
        if (weights.Length != n || dues.Length != n)
            throw new InvalidDataException(FormattableString.Invariant($"{name}: found {n} lengths, {weights.Length} weights, {dues.Length} due dates; wanted as many of each."));

        int[] first = [.. Enumerable.Repeat(-1, n)];
        int[][] between = [.. Enumerable.Range(0, n).Select(_ => Enumerable.Repeat(-1, n).ToArray())];
        for (int at = titles[3] + 1; at < lines.Length && !lines[at].StartsWith("End", StringComparison.Ordinal); at++)
            Put(lines, at, name, first, between);
        if (first.Contains(-1) || between.Where((row, i) => row.Where((s, j) => s < 0 && i != j).Any()).Any())
            throw new InvalidDataException(FormattableString.Invariant($"{name}, Setup Times: found fewer than {n * n} set-ups; wanted one for each job as the first and for each pair of jobs."));

        for (int i = 0; i < n; i++)
            between[i][i] = 0;
        return new(name, lengths, weights, dues, first, between);
    }

    private static void Put(string[] lines, int at, string name, int[] first, int[][] between)
    {
        string[] cells = lines[at].Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        int[] numbers = [.. cells.Select(c => int.TryParse(c, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int v) ? v : int.MinValue)];
        if (numbers.Length != 3 || numbers[0] < -1 || numbers[0] >= first.Length || numbers[1] < 0 || numbers[1] >= first.Length || numbers[2] < 0)
            throw Bad(name, at, lines[at], "job before (-1 for none), job after, set-up");
        (numbers[0] < 0 ? first : between[numbers[0]])[numbers[1]] = numbers[2];
    }

    private static int Find(string[] lines, string title, string name)
    {
        int at = Array.IndexOf(lines, title);
        return at >= 0 ? at : throw new InvalidDataException(FormattableString.Invariant($"{name}: found no line \"{title}\"; wanted one."));
    }

    private static int[] Column(string[] lines, int from, int to, string name) => [.. Enumerable.Range(from + 1, Math.Max(0, to - from - 1)).Select(at =>
        int.TryParse(lines[at].Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int v) ? v : throw Bad(name, at, lines[at], "a whole number"))];

    private static InvalidDataException Bad(string name, int at, string found, string wanted) =>
        new(FormattableString.Invariant($"{name}, line {at + 1}: found \"{found}\"; wanted {wanted}."));
}
