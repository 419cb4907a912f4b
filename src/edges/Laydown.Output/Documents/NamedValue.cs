namespace Laydown.Output.Documents;

/// <summary>A line of a form: what, and its value.</summary>
/// <param name="Name">What.</param>
/// <param name="Value">The value in words.</param>
internal sealed record NamedValue(string Name, string Value);
