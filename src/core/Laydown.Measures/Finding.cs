namespace Laydown.Measures;

/// <summary>One result of a check: what, where, how bad, measured and wanted value, and the repair offered.</summary>
/// <param name="Code">Stable short name of the check, lower case with hyphens, such as <c>image-ppi</c>.</param>
/// <param name="Severity">How bad it is.</param>
/// <param name="Page">Page from 1; null for the whole file or the order line.</param>
/// <param name="Place">Where, in mm of the page at its effective size from its lower left corner; null where no place can be named.</param>
/// <param name="What">What was found, in a sentence for the operator.</param>
/// <param name="Measured">The measured value, with unit.</param>
/// <param name="Wanted">The wanted value, with unit.</param>
/// <param name="Repair">The repair the product offers, or null.</param>
/// <param name="Source">Key into docs/sources.md, <c>common practice, no source</c> or <c>from memory</c>.</param>
public sealed record Finding(
    string Code, Severity Severity, int? Page, RectMm? Place, string What, string Measured, string Wanted, string? Repair, string Source);
