using Laydown.Measures;

namespace Laydown.Formats.Patches;

/// <summary>How large a file of readings may be.</summary>
internal static class PatchLimits
{
    /// <summary>Most bytes: 64 MiB.</summary>
    public const int Bytes = 64 << 20;

    /// <summary>Most rows.</summary>
    public const int Rows = 200_000;

    /// <summary>Most fields of a row.</summary>
    public const int Fields = 1000;

    /// <summary>Most faults told of one file; the rest is counted.</summary>
    public const int Faults = 20;

    /// <summary>A fault when the file is empty or too large.</summary>
    public static InputFault? Refuse(string file, int bytes) => bytes switch
    {
        0 => new(file, null, "file", "0 bytes", "readings of at least one patch"),
        > Bytes => new(file, null, "file", Invariant($"{bytes} bytes"), Invariant($"at most {Bytes} bytes")),
        _ => null,
    };
}
