namespace Laydown.Output.Documents;

/// <summary>One of the large figures at the head of a set-up sheet.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Value">The value as printed.</param>
/// <param name="Unit">Its unit; empty for words.</param>
/// <param name="Note">What belongs to it, in a few words.</param>
internal sealed record KeyFigure(string Name, string Value, string Unit, string Note);
