using Laydown.Plan.Log;

namespace Laydown.Shop.Log;

/// <summary>Which page of the log is wanted.</summary>
/// <param name="Kind">One kind; null for all.</param>
/// <param name="RunId">One run; null for all.</param>
/// <param name="Span">Press and time.</param>
/// <param name="After">Where the page before ended; null for the first page.</param>
/// <param name="Rows">Entries of a page, 1 to <see cref="MostRows"/>.</param>
public sealed record LogWish(LogKind? Kind = null, string? RunId = null, LogSpan? Span = null, LogCursor? After = null, int Rows = 50)
{
    /// <summary>Most entries of a page.</summary>
    public const int MostRows = 500;
}
