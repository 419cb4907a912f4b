namespace Laydown.Press.Machines;

/// <summary>A nozzle that fires aslant.</summary>
/// <param name="Nozzle">Its number from 0 along the channel; 0 meets a row last.</param>
/// <param name="OffsetUm">How far its dots fall beside their row along the feed, µm, −3000 to 3000; over 0 towards rows printed later.</param>
public sealed record SlantedNozzle(int Nozzle, double OffsetUm);
