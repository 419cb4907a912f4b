using Laydown.Shop.Layout;

namespace Laydown.Web.Layout;

/// <summary>What a search for better layouts tells those who watch it.</summary>
/// <param name="Seconds">Since it began.</param>
/// <param name="Found">The best layout so far.</param>
/// <param name="Ended">Why it ended, in words; null while it goes on.</param>
public sealed record SearchNews(double Seconds, FoundLayout? Found, string? Ended);
