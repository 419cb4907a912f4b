using System.Globalization;
using Laydown.Colour.Spectra;
using Laydown.Core.Tests.Colour;

namespace Laydown.Core.Tests.Optics.Fits;

/// <summary>Columns of public sets of K and S; the folder's README names their sources.</summary>
internal static class MaterialSets
{
    /// <summary>A column by its name, in the product's bands.</summary>
    public static double[] Column(string file, string name)
    {
        string[] lines = [.. File.ReadLines(PublishedTable.PathOf(file)).Where(l => l.Length > 0)];
        int at = Array.IndexOf(lines[0].Split(','), name);
        return [.. lines.Skip(1).Take(Bands.Count).Select(l => double.Parse(l.Split(',')[at], CultureInfo.InvariantCulture))];
    }
}
