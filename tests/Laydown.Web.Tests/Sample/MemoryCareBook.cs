using System.Collections.Concurrent;
using Laydown.Measures;
using Laydown.Shop.Press;

namespace Laydown.Web.Tests.Sample;

/// <summary>What was read at presses, in memory.</summary>
internal sealed class MemoryCareBook : IPressCareBook
{
    private readonly ConcurrentDictionary<string, PressCarePage> pages = new(StringComparer.Ordinal);

    public Task<PressCarePage?> ReadAsync(string pressId, CancellationToken cancellation) => Task.FromResult(pages.GetValueOrDefault(pressId));

    public Task<Reading<PressCarePage>> ChangeAsync(string pressId, Func<PressCarePage?, Reading<PressCarePage>> change, CancellationToken cancellation)
    {
        Reading<PressCarePage> made = change(pages.GetValueOrDefault(pressId));
        if (made.IsTaken)
            pages[pressId] = made.Value;
        return Task.FromResult(made);
    }
}
