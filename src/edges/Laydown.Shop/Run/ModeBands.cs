using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>Forecast of bands of one mode, over all faces the one that is seen most.</summary>
/// <param name="ModeId">The mode.</param>
/// <param name="ModeName">Its name.</param>
/// <param name="Forecast">The forecast, or null where the mode cannot print this.</param>
/// <param name="Told">The forecast in a sentence, or why there is none.</param>
public sealed record ModeBands(string ModeId, string ModeName, BandForecast? Forecast, string Told);
