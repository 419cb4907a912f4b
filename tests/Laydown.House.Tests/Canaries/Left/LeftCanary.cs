using Laydown.House.Tests.Canaries.Right;

namespace Laydown.House.Tests.Canaries.Left;

/// <summary>A small wrong type: its room and the other know each other.</summary>
public sealed class LeftCanary
{
    public RightCanary? Neighbour { get; init; }
}
