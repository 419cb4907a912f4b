using Laydown.Measures;

namespace Laydown.Artwork.Checks;

/// <summary>Sizes of bar codes, their check digits and their modules in device dots. [GS1GenSpecs]</summary>
public static class CodeRules
{
    /// <summary>What a kind of code wants; null for kinds not known here.</summary>
    public static CodeRule? For(string symbology) => symbology switch
    {
        "EAN-13" => new(0.264, 0.330, 0.660, 7, 113, Sources.Codes),
        "EAN-8" => new(0.264, 0.330, 0.660, 7, 81, Sources.Codes),
        "UPC-A" => new(0.264, 0.330, 0.660, 9, 113, Sources.Codes),
        "ITF-14" => new(0.495, 0.495, 1.016, 10, 0, Sources.Codes),
        "GS1-128" => new(0.495, 0.495, 1.016, 10, 0, Sources.Codes),
        "QR" => new(0, 0, 0, 4, 0, Sources.Memory),
        _ => null,
    };

    /// <summary>Whether a code has modules both ways.</summary>
    public static bool IsTwoDimensional(string symbology) => symbology is "QR" or "Data Matrix" or "Aztec";

    /// <summary>The check digit that belongs to a number: weights 3 and 1 from the right, to the next ten.</summary>
    /// <exception cref="ArgumentException">The number is empty or holds something other than digits.</exception>
    public static int CheckDigit(string digits)
    {
        Bounds.Named(digits);
        if (!digits.All(char.IsAsciiDigit))
            throw new ArgumentException(Invariant($"Check digit: found “{digits}”; wanted digits only."), nameof(digits));

        int sum = digits.Reverse().Select((c, i) => (c - '0') * (i % 2 == 0 ? 3 : 1)).Sum();
        return (10 - (sum % 10)) % 10;
    }

    /// <summary>The whole number of dots for a module: within the limits, nearest to the recommended width.</summary>
    /// <returns>Dots for one module; null where no whole number lies within the limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="dpi"/> is not over 0.</exception>
    public static int? DotsFor(CodeRule rule, int dpi)
    {
        ArgumentNullException.ThrowIfNull(rule);
        double dot = 25.4 / Bounds.Within(dpi, 1, 100_000);
        int[] dots = [.. Enumerable.Range(1, 1 + (int)(rule.MostModuleMm / dot)).Where(n => n * dot >= rule.LeastModuleMm - 5e-4 && n * dot <= rule.MostModuleMm + 5e-4)];
        return dots.Length == 0 ? null : dots.MinBy(n => Math.Abs((n * dot) - rule.WantedModuleMm));
    }
}
