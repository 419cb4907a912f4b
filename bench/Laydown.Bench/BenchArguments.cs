using System.Globalization;

namespace Laydown.Bench;

/// <summary>What was asked of the bench.</summary>
/// <param name="Name">Which bench.</param>
/// <param name="Instances">Folder of instances; for <c>spine</c> a shop's folder to take catalogue and orders from, for <c>colour</c> a
/// folder of charts, for <c>daynight</c> a folder of pairs, for <c>raster</c> a folder of pictures; null for the project's own.</param>
/// <param name="Seconds">At least this long, by doing the work again in a fresh folder; 0 for once.</param>
/// <param name="Out">File to write the result to as JSON, or null.</param>
/// <param name="Json">Whether the result is printed as JSON.</param>
internal sealed record BenchArguments(string Name, string? Instances, double Seconds, string? Out, bool Json)
{
    /// <summary>The arguments, or null where they cannot be understood.</summary>
    public static BenchArguments? Parse(IReadOnlyList<string> words)
    {
        if (words.Count == 0 || words[0] is not ("spine" or "colour" or "daynight" or "raster"))
            return null;
        BenchArguments arguments = new(words[0], null, 0, null, false);
        for (int i = 1; i < words.Count; i++)
        {
            string? value = i + 1 < words.Count ? words[i + 1] : null;
            switch (words[i])
            {
                case "--json":
                    arguments = arguments with { Json = true };
                    continue;
                case "--instances" when value is not null && Directory.Exists(value):
                    arguments = arguments with { Instances = Path.GetFullPath(value) };
                    break;
                case "--out" when value is not null:
                    arguments = arguments with { Out = Path.GetFullPath(value) };
                    break;
                case "--seconds" when double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds) && seconds >= 0:
                    arguments = arguments with { Seconds = seconds };
                    break;
                default:
                    return null;
            }

            i++;
        }

        return arguments;
    }
}
