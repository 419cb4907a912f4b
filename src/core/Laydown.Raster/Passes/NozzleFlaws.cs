namespace Laydown.Raster.Passes;

/// <summary>Nozzles of one channel that do not print as they should.</summary>
/// <param name="Missing">Nozzles that fire nothing, from 0 along the whole head; 0 meets a row last.</param>
/// <param name="SlantUm">Nozzles that fire aslant: how far their dots fall beside their row, µm, over 0 towards later rows.</param>
public sealed record NozzleFlaws(IReadOnlySet<int> Missing, IReadOnlyDictionary<int, double> SlantUm)
{
    /// <summary>Every nozzle prints as it should.</summary>
    public static NozzleFlaws None { get; } = new(new HashSet<int>(), new Dictionary<int, double>());

    /// <summary>Whether there is no flaw.</summary>
    public bool IsSound => Missing.Count == 0 && SlantUm.Count == 0;
}
