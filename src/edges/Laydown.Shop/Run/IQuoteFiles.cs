using Laydown.Measures;
using Laydown.Plan.Costs;

namespace Laydown.Shop.Run;

/// <summary>Reads quotes to be reckoned from files of any origin, without a shop.</summary>
public interface IQuoteFiles
{
    /// <summary>What a quote is reckoned from, or every fault with file and field.</summary>
    /// <param name="path">Where it lies.</param>
    Reading<QuoteJob> Quote(string path);
}
