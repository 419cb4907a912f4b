using System.Globalization;
using System.Text.RegularExpressions;
using Laydown.Measures;

namespace Laydown.Formats.Svg;

/// <summary>x' = a x + c y + e, y' = b x + d y + f. [SVG11]</summary>
internal readonly partial record struct SvgTransform(double A, double B, double C, double D, double E, double F)
{
    internal static SvgTransform None { get; } = new(1, 0, 0, 1, 0, 0);

    /// <summary>How much lengths grow at most.</summary>
    internal double Growth => Math.Sqrt(Math.Max((A * A) + (B * B), (C * C) + (D * D)));

    internal PointMm Of(PointMm p) => new((A * p.XMm) + (C * p.YMm) + E, (B * p.XMm) + (D * p.YMm) + F);

    /// <summary>First the inner, then this one.</summary>
    internal SvgTransform After(SvgTransform inner) => new(
        (A * inner.A) + (C * inner.B), (B * inner.A) + (D * inner.B), (A * inner.C) + (C * inner.D), (B * inner.C) + (D * inner.D),
        (A * inner.E) + (C * inner.F) + E, (B * inner.E) + (D * inner.F) + F);

    /// <summary>The transforms of an attribute, or null where it cannot be read.</summary>
    internal static SvgTransform? Read(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
            return None;
        SvgTransform all = None;
        int end = 0;
        foreach (Match match in One().Matches(text))
        {
            if (text[end..match.Index].Trim(' ', ',', '\t', '\r', '\n').Length > 0)
                return null;
            end = match.Index + match.Length;
            double?[] numbers = [.. match.Groups[2].Value.Split([' ', ',', '\t', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries)
                .Select(t => double.TryParse(t, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) && double.IsFinite(v) ? v : (double?)null)];
            if (numbers.Any(n => n is null) || One(match.Groups[1].Value, [.. numbers.Select(n => n!.Value)]) is not { } one)
                return null;
            all = all.After(one);
        }

        return text[end..].Trim().Length == 0 ? all : null;
    }

    private static SvgTransform? One(string name, double[] n) => (name, n.Length) switch
    {
        ("matrix", 6) => new(n[0], n[1], n[2], n[3], n[4], n[5]),
        ("translate", 1 or 2) => new(1, 0, 0, 1, n[0], n.Length > 1 ? n[1] : 0),
        ("scale", 1 or 2) => new(n[0], 0, 0, n[^1], 0, 0),
        ("rotate", 1) => Turn(n[0]),
        ("rotate", 3) => new SvgTransform(1, 0, 0, 1, n[1], n[2]).After(Turn(n[0])).After(new(1, 0, 0, 1, -n[1], -n[2])),
        ("skewX", 1) => new(1, 0, Math.Tan(n[0] * Math.PI / 180), 1, 0, 0),
        ("skewY", 1) => new(1, Math.Tan(n[0] * Math.PI / 180), 0, 1, 0, 0),
        _ => null,
    };

    private static SvgTransform Turn(double degrees)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        return new(cos, sin, -sin, cos, 0, 0);
    }

    [GeneratedRegex(@"([A-Za-z]+)\s*\(([^()]*)\)", RegexOptions.None, matchTimeoutMilliseconds: 2000)]
    private static partial Regex One();
}
