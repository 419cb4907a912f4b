namespace Laydown.Intake.Artwork;

/// <summary>How a child process ended.</summary>
/// <param name="Ending">Whether it ran, was missing or ran out of time.</param>
/// <param name="ExitCode">Its exit code; −1 where it did not end by itself.</param>
/// <param name="Output">What it wrote to its output, cut at a limit.</param>
/// <param name="Errors">What it wrote to its error stream, cut at a limit.</param>
public sealed record ChildResult(ChildEnding Ending, int ExitCode, string Output, string Errors);
