using Laydown.Press.Inks;

namespace Laydown.Press.Machines;

/// <summary>One ink channel of the press.</summary>
/// <param name="Id">Short name, unique on the press, such as <c>LC</c>.</param>
/// <param name="Role">Which ink it carries.</param>
/// <param name="TankId">The tank that feeds it.</param>
/// <param name="Nozzles">Nozzles in the feed direction, all heads of the channel together.</param>
/// <param name="NozzlesPerInch">Native nozzle density along the feed.</param>
public sealed record Channel(string Id, InkRole Role, string TankId, int Nozzles, int NozzlesPerInch);
