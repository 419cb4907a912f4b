namespace Laydown.Instances.Rectangles;

/// <summary>Reads the public form of gang runs: a line with the sheet's width and height, then a line for each job with width, height and copies.</summary>
public static class GangInstance
{
    /// <summary>Reads one instance; its items are the jobs.</summary>
    /// <exception cref="InvalidDataException">A line holds other than the numbers wanted; the message names file, line, found and wanted.</exception>
    public static RectInstance Read(string path)
    {
        List<int[]> lines = [.. File.ReadLines(path).Select((l, i) => (Text: l, Line: i + 1)).Where(l => l.Text.Trim().Length > 0).Select((l, i) => Numbers(path, l.Text, l.Line, i == 0 ? 2 : 3))];
        return new(
            Path.GetFileNameWithoutExtension(path), [new(lines[0][0], lines[0][1], null, 1)], [.. lines.Skip(1).Select(l => new RectItem(l[0], l[1], l[2], -1))],
            [], new Dictionary<string, string>());
    }

    private static int[] Numbers(string path, string text, int line, int wanted)
    {
        string[] cells = text.Split(',');
        int[] numbers = new int[cells.Length];
        for (int i = 0; i < cells.Length; i++)
            if (!RectInstance.TryNumber(cells[i], out numbers[i]))
                throw Fault(path, text, line, wanted);
        return cells.Length == wanted ? numbers : throw Fault(path, text, line, wanted);
    }

    private static InvalidDataException Fault(string path, string text, int line, int wanted) =>
        new(FormattableString.Invariant($"{Path.GetFileName(path)}, line {line}: found '{text}'; wanted {wanted} whole numbers with commas between."));
}
