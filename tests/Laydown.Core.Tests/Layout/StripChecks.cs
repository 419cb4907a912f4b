using Laydown.Instances.Rectangles;
using Laydown.Layout.Strips;

namespace Laydown.Core.Tests.Layout;

/// <summary>Judges strips by the independent checker.</summary>
internal static class StripChecks
{
    public static IReadOnlyList<string> Faults(RectInstance instance, StripAnswer answer, bool mayTurn) => RectChecker.Faults(
        instance with { Bins = [instance.Bins[0] with { Height = answer.Height }] },
        [new(0, 1, [.. answer.Spots.Select(s => new PlacedRect(s.Piece, s.Place.X, s.Place.Y, s.Place.W, s.Place.H))])],
        new(mayTurn));
}
