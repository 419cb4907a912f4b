using Laydown.Colour.Inks;
using Laydown.Colour.Readings;
using Laydown.Colour.Spaces;

namespace Laydown.Core.Tests.Colour.Calibration;

/// <summary>A press that is known: generic inks, and a dot that grows by a known curve.</summary>
internal static class SyntheticPress
{
    public static readonly string[] Names = ["Cyan", "Magenta", "Yellow", "Black"];

    public static NeugebauerModel Model { get; } = Prints.Model();

    /// <summary>Dot as printed: grows by <paramref name="gain"/> at half tone, nothing at the ends.</summary>
    public static double Grown(double ink, double gain) => ink + (4 * gain * ink * (1 - ink));

    public static Lab Print(double[] inks, double gain = 0.15) =>
        Lab.From(Model.ToXyz([.. inks.Select(i => Grown(i, gain))]), ReadingColour.White);

    public static Patch Read(string id, double[] inks, double gain = 0.15) => new(id, inks, Print(inks, gain), null);

    /// <summary>Every ink at even steps.</summary>
    public static ReadingSet Wedges(int steps = 20, double gain = 0.15) => new("wedges", Names, MeasuredHow.Unsaid,
        [.. Enumerable.Range(0, 4).SelectMany(ink => Enumerable.Range(0, steps + 1).Select(s => Read(
            Names[ink] + s, [.. Enumerable.Range(0, 4).Select(i => i == ink ? s / (double)steps : 0)], gain)))]);

    public static ReadingSet With(this ReadingSet set, string id, Func<Patch, Patch?> change) =>
        set with { Patches = [.. set.Patches.Select(p => p.Id == id ? change(p) : p).OfType<Patch>()] };
}
