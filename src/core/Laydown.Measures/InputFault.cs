namespace Laydown.Measures;

/// <summary>Why outside input was refused.</summary>
/// <param name="File">Name of the file without its folder.</param>
/// <param name="Page">Page or image number from 1; null for the whole file.</param>
/// <param name="Field">The field as its format names it; for JSON the path, such as <c>/items/0/quantity</c>.</param>
/// <param name="Found">The value read, with unit.</param>
/// <param name="Wanted">What would have been taken, with unit.</param>
public sealed record InputFault(string File, int? Page, string Field, string Found, string Wanted)
{
    /// <summary>One line, such as <c>terns.tif, page 2, InkNames: found 7 names for 8 inks; wanted one name for each ink.</c></summary>
    public override string ToString() =>
        Invariant($"{File}{(Page is null ? "" : Invariant($", page {Page}"))}, {Field}: found {Found}; wanted {Wanted}.");
}
