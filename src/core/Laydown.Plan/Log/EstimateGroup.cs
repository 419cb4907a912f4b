namespace Laydown.Plan.Log;

/// <summary>Runs of one press × mode × stock as the model sees them: logarithms of actual over estimate.</summary>
/// <param name="Branch">Press and mode.</param>
/// <param name="StockId">The stock.</param>
/// <param name="Logs">The logarithms, oldest first; at least one.</param>
internal sealed record EstimateGroup((string PressId, string ModeId) Branch, string StockId, IReadOnlyList<double> Logs)
{
    /// <summary>How many.</summary>
    public int Count => Logs.Count;

    /// <summary>Their mean.</summary>
    public double Mean { get; } = Logs.Average();

    /// <summary>Sum of squared distances from the mean.</summary>
    public double Squares { get; } = Logs.Sum(l => (l - Logs.Average()) * (l - Logs.Average()));
}
