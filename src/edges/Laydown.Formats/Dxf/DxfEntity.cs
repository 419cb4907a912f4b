using System.Globalization;

namespace Laydown.Formats.Dxf;

/// <summary>One entity with its groups.</summary>
/// <param name="kind">Such as <c>LINE</c>.</param>
/// <param name="line">Line it begins at.</param>
internal sealed class DxfEntity(string kind, int line)
{
    private readonly List<DxfPair> pairs = [];

    internal string Kind => kind;

    internal int Line => line;

    internal IReadOnlyList<DxfPair> Pairs => pairs;

    /// <summary>Where it stands, for faults.</summary>
    internal string Field => Invariant($"line {line}, {kind}");

    internal void Add(DxfPair pair) => pairs.Add(pair);

    /// <summary>The first number of a code, or what stands for it where there is none.</summary>
    internal double Number(int code, double missing = double.NaN)
    {
        foreach (DxfPair pair in pairs)
            if (pair.Code == code)
                return Parsed(pair);
        return !double.IsNaN(missing) ? missing : throw new DxfFaultException(Field, Invariant($"no group {code}"), "a whole entity");
    }

    internal int Whole(int code, int missing) => (int)Math.Clamp(Number(code, missing), int.MinValue, int.MaxValue);

    internal double Parsed(DxfPair pair) =>
        double.TryParse(pair.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) && Math.Abs(value) <= 1e12
            ? value
            : throw new DxfFaultException(Invariant($"line {pair.Line + 1}, {kind}, group {pair.Code}"), Short(pair.Text), "a number of usual size");

    internal static string Short(string text) => text.Length == 0 ? "nothing" : text.Length > 40 ? text[..40] + "…" : text;
}
