namespace Laydown.Web.Http;

/// <summary>Rows of numbers sent to be predicted (inks, 0 to 1) or separated (L*, a*, b*).</summary>
/// <param name="Rows">The rows.</param>
public sealed record ListedNumbers(IReadOnlyList<IReadOnlyList<double>>? Rows);
