namespace Laydown.Plan.Runs;

/// <summary>One thing a mode was judged by.</summary>
/// <param name="About">What, such as <c>fine text</c>.</param>
/// <param name="Standing">How the mode stands to it.</param>
/// <param name="Said">In a sentence, with the numbers.</param>
public sealed record ModePoint(string About, ModeStanding Standing, string Said);
