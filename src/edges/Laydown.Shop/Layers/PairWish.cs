namespace Laydown.Shop.Layers;

/// <summary>Where the two pictures of a panel come from and how they are laid on the piece.</summary>
/// <param name="Day">The day picture.</param>
/// <param name="Night">The night picture.</param>
/// <param name="DayPlacing">How the day picture is laid on the piece.</param>
/// <param name="NightPlacing">How the night picture is laid on the piece where no points are named.</param>
/// <param name="Points">Places named in both: none, 2 (moved, turned, scaled) or 3 (sheared as well).</param>
public sealed record PairWish(
    PairSource Day, PairSource Night, PairPlacing DayPlacing, PairPlacing NightPlacing, IReadOnlyList<PairPoint> Points);
