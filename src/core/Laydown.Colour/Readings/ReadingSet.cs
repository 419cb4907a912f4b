namespace Laydown.Colour.Readings;

/// <summary>Readings of one chart.</summary>
/// <param name="Name">Name for people, such as the file's descriptor.</param>
/// <param name="InkNames">Names of the inks, such as Cyan or CMYK_C as read and put into plain words; the order of every patch's inks.</param>
/// <param name="Measured">How it was measured.</param>
/// <param name="Patches">All readings, repeats kept; at least one.</param>
public sealed record ReadingSet(string Name, IReadOnlyList<string> InkNames, MeasuredHow Measured, IReadOnlyList<Patch> Patches)
{
    /// <summary>What the reader of the file had to decide, each in a sentence for the operator, such as the unit of the inks.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Whether every patch has a spectrum in the same bands.</summary>
    public bool IsSpectral => Patches.Count > 0 && Patches[0].Spectrum is { } first
        && Patches.All(p => p.Spectrum is { } s && s.FirstNm == first.FirstNm && s.StepNm == first.StepNm && s.Values.Count == first.Values.Count);
}
