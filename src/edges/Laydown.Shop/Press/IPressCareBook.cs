using Laydown.Measures;

namespace Laydown.Shop.Press;

/// <summary>What was last read and done at each press. Every change is one transaction.</summary>
public interface IPressCareBook
{
    /// <summary>The page of a press, or null where nothing was written yet.</summary>
    Task<PressCarePage?> ReadAsync(string pressId, CancellationToken cancellation);

    /// <summary>Changes the page of a press: other writers wait from before it is read till it is saved.</summary>
    /// <param name="pressId">The press.</param>
    /// <param name="change">From the page, null where there is none, to the new page, or why nothing is changed.</param>
    /// <param name="cancellation">Stops before saving.</param>
    Task<Reading<PressCarePage>> ChangeAsync(string pressId, Func<PressCarePage?, Reading<PressCarePage>> change, CancellationToken cancellation);
}
