namespace Laydown.Press.Machines;

/// <summary>What the last nozzle pattern showed of one channel.</summary>
/// <param name="ChannelId">The channel.</param>
/// <param name="Missing">Nozzles that fire nothing, from 0 along the channel; 0 meets a row last.</param>
/// <param name="Slanted">Nozzles that fire aslant.</param>
public sealed record NozzleState(string ChannelId, IReadOnlyList<int> Missing, IReadOnlyList<SlantedNozzle> Slanted);
