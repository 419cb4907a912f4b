namespace Laydown.Plan.Runs;

/// <summary>A mode that a person took in place of the one proposed.</summary>
/// <param name="ModeId">The mode taken.</param>
/// <param name="By">Who took it.</param>
/// <param name="Reason">Why, in their words.</param>
public sealed record ModeOverrule(string ModeId, string By, string Reason);
