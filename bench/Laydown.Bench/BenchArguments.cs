using System.Globalization;

namespace Laydown.Bench;

/// <summary>What was asked of the bench.</summary>
/// <param name="Name">Which bench.</param>
/// <param name="Instances">Folder of instances; for <c>spine</c> a shop's folder to take catalogue and orders from, for <c>colour</c> a
/// folder of charts, for <c>daynight</c> a folder of pairs, for <c>raster</c> a folder of pictures, for <c>layout</c> and <c>week</c> a folder of published instances; null for the project's own.</param>
/// <param name="Seconds">At least this long, by doing the work again in a fresh folder; 0 for once; for <c>layout</c> and <c>week</c> the time of each instance, for <c>planner</c> that of each sequence.</param>
/// <param name="Out">File to write the result to as JSON, or null.</param>
/// <param name="Json">Whether the result is printed as JSON.</param>
/// <param name="Family">For <c>layout</c> the one family wanted, or null for all.</param>
/// <param name="Sample">For <c>layout</c> and <c>week</c> every so manieth instance, from 1.</param>
/// <param name="ByProcessor">For <c>layout</c> and <c>week</c> whether the time is processor time of each worker: figures that other work on the machine does not spoil.</param>
/// <param name="Keep">For <c>layout</c>, <c>week</c> and <c>planner</c> whether the results are kept and the table of docs/benchmarks written.</param>
internal sealed record BenchArguments(
    string Name, string? Instances, double Seconds, string? Out, bool Json, string? Family = null, int Sample = 1, bool ByProcessor = false, bool Keep = false)
{
    /// <summary>The arguments, or null where they cannot be understood.</summary>
    public static BenchArguments? Parse(IReadOnlyList<string> words)
    {
        if (words.Count == 0 || words[0] is not ("spine" or "colour" or "daynight" or "raster" or "layout" or "week" or "planner" or "log"))
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
                case "--cpu" when arguments.Name is "layout" or "week":
                    arguments = arguments with { ByProcessor = true };
                    continue;
                case "--keep" when arguments.Name is "layout" or "week" or "planner":
                    arguments = arguments with { Keep = true };
                    continue;
                case "--family" when value is not null && arguments.Name == "layout":
                    arguments = arguments with { Family = value };
                    break;
                case "--sample" when arguments.Name is "layout" or "week" && int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out int sample) && sample >= 1:
                    arguments = arguments with { Sample = sample };
                    break;
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
