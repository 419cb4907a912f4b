using Laydown.House.Tests.Canaries.Left;

namespace Laydown.House.Tests.Canaries.Right;

/// <summary>The other half of the circle.</summary>
public sealed class RightCanary
{
    public LeftCanary? Neighbour { get; init; }
}
