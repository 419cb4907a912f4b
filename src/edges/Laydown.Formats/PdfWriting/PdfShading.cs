using Laydown.Measures;

namespace Laydown.Formats.PdfWriting;

/// <summary>Shadings as PDF dictionaries.</summary>
internal static class PdfShading
{
    /// <summary>Colours that change along a line and stay beyond its ends.</summary>
    /// <exception cref="ArgumentException">Fewer than two stops, or stops that do not rise from 0 to 1.</exception>
    public static string Linear(string space, PointMm from, PointMm to, IReadOnlyList<(double At, double Red, double Green, double Blue)> stops)
    {
        if (stops.Count < 2 || stops[0].At != 0 || stops[^1].At != 1 || stops.Zip(stops.Skip(1)).Any(p => p.Second.At <= p.First.At))
            throw new ArgumentException("Shading: wanted at least two stops that rise from 0 to 1.", nameof(stops));

        string[] parts = [.. stops.Zip(stops.Skip(1)).Select(p => Invariant(
            $"<< /FunctionType 2 /Domain [0 1] /C0 [{Colour(p.First)}] /C1 [{Colour(p.Second)}] /N 1 >>"))];
        string function = parts.Length == 1
            ? parts[0]
            : Invariant($"<< /FunctionType 3 /Domain [0 1] /Functions [{string.Join(' ', parts)}] /Bounds [{PdfText.Numbers(stops.Skip(1).SkipLast(1).Select(s => s.At))}] /Encode [{string.Join(' ', parts.Select(_ => "0 1"))}] >>");
        return Invariant($"<< /ShadingType 2 /ColorSpace {space} /Coords [{PdfText.Numbers(from.XMm, from.YMm, to.XMm, to.YMm)}] /Extend [true true] /Function {function} >>");
    }

    private static string Colour((double At, double Red, double Green, double Blue) stop) => PdfText.Numbers(stop.Red, stop.Green, stop.Blue);
}
