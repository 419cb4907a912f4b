using System.Text.Json.Serialization;

namespace Laydown.Shop.Run;

/// <summary>How far the making of a run is.</summary>
/// <param name="RunId">The run.</param>
/// <param name="Step">What is being done, in words.</param>
/// <param name="DonePercent">Done of the whole, percent, never falling.</param>
public sealed record MakeProgress(string RunId, string Step, double DonePercent)
{
    /// <summary>Time that is left by the rate measured so far, s; null while nothing is known of it.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? SecondsLeft { get; init; }
}
