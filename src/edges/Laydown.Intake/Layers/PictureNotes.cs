using Laydown.Measures;

namespace Laydown.Intake.Layers;

/// <summary>Collects what is noticed while a picture is read.</summary>
/// <param name="which">Which picture, in words: <c>Day picture</c>.</param>
/// <param name="page">Page or frame from 1.</param>
internal sealed class PictureNotes(string which, int page)
{
    private const string Source = "common practice, no source";
    private readonly List<Finding> all = [];

    /// <summary>All of them.</summary>
    public IReadOnlyList<Finding> All => all;

    /// <summary>Something the operator should look at.</summary>
    public void Warn(string code, string what, string measured, string wanted) => Add(code, Severity.Warn, what, measured, wanted);

    /// <summary>Something worth knowing.</summary>
    public void Note(string code, string what, string measured, string wanted) => Add(code, Severity.Note, what, measured, wanted);

    private void Add(string code, Severity severity, string what, string measured, string wanted) =>
        all.Add(new(code, severity, page, null, Invariant($"{which}: {what}"), measured, wanted, null, Source));
}
