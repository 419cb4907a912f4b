using Laydown.Measures;

namespace Laydown.Formats.TiffWriting;

/// <summary>What a contone TIFF says about itself.</summary>
/// <param name="Columns">Pixels across, at least 1.</param>
/// <param name="Rows">Pixels down, at least 1.</param>
/// <param name="Ppi">Resolution in both directions, ppi, over 0.</param>
/// <param name="InkNames">One name for each ink in the order of the samples; 7-bit characters, no blanks alone.</param>
/// <param name="Description">A line for people.</param>
/// <param name="Instant">The instant written into the file; null leaves it out, so that equal pixels give equal bytes.</param>
public sealed record ContoneHeader(
    int Columns, int Rows, double Ppi, IReadOnlyList<string> InkNames, string Description, DateTimeOffset? Instant)
{
    /// <summary>Bytes of one row.</summary>
    public int RowBytes => checked(Columns * InkNames.Count);

    /// <summary>Rows of one strip: about a mebibyte, so that strips pack well and a reader needs little memory.</summary>
    public int RowsPerStrip => Math.Clamp((1 << 20) / RowBytes, 1, Rows);

    /// <summary>The header, when every field is within its range.</summary>
    /// <exception cref="ArgumentException">A field is not; the message names it.</exception>
    public ContoneHeader Checked()
    {
        Bounds.Within(Columns, 1, int.MaxValue);
        Bounds.Within(Rows, 1, int.MaxValue);
        Bounds.Within(Ppi, 1, 10_000);
        Bounds.NotEmpty(InkNames);
        foreach (string name in InkNames)
        {
            if (string.IsNullOrWhiteSpace(name) || name.Any(c => c is < ' ' or > '~'))
                throw new ArgumentException(Invariant($"InkNames: found \"{name}\"; wanted printable 7-bit characters."));
        }

        return this;
    }
}
