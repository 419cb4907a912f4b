using Laydown.Measures;

namespace Laydown.Geometry.Outlines;

/// <summary>Gathers what was mended in a file, and what could not be.</summary>
/// <param name="file">Name of the file, for faults.</param>
internal sealed class OutlineNotes(string file)
{
    private const int Most = 200;

    private readonly List<Finding> findings = [];
    private readonly List<InputFault> faults = [];

    internal IReadOnlyList<Finding> Findings => findings;

    internal IReadOnlyList<InputFault> Faults => faults;

    internal void Refuse(string field, string found, string wanted)
    {
        if (faults.Count < Most)
            faults.Add(new(file, null, field, found, wanted));
    }

    internal void Mended(string code, Severity severity, PointMm? place, string what, string measured, string wanted, string repair)
    {
        if (findings.Count < Most)
            findings.Add(new(code, severity, null, place is { } p ? new(p.XMm, p.YMm, 0, 0) : null, what, measured, wanted, repair, "common practice, no source"));
    }
}
