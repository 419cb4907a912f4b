using Laydown.Press.Conditions;

namespace Laydown.Demo.Profiles;

/// <summary>Named colours of the invented observatory.</summary>
internal static class DemoColours
{
    private const string Source = "invented for the demo";

    /// <summary>The library; the last colour lies outside the gamut of any of the demo's presses.</summary>
    internal static ColourLibrary Library { get; } = new(
    [
        new("saltmarsh-green", "Saltmarsh green", new(48, -18, 22), null, Source),
        new("tern-grey", "Tern grey", new(66, -1, -3), null, Source),
        new("channel-blue", "Channel blue", new(42, -14, -30), null, Source),
        new("dune-sand", "Dune sand", new(80, 3, 18), null, Source),
        new("samphire-red", "Samphire red", new(44, 50, 24), null, Source),
        new("night-mud", "Night mud", new(24, 3, 4), null, Source),
        new("oystercatcher-orange", "Oystercatcher orange", new(64, 66, 88), null, Source),
    ]);
}
