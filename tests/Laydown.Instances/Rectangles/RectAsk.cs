namespace Laydown.Instances.Rectangles;

/// <summary>What a layout of rectangles has to keep.</summary>
/// <param name="MayTurn">Whether items may lie turned.</param>
/// <param name="Guillotine">Whether edge-to-edge cuts must free every item.</param>
/// <param name="Stages">Most stages of such cuts, trimming not counted; 0 for any.</param>
/// <param name="FirstUpright">Direction of the first stage; null for either.</param>
/// <param name="MoreAllowed">Whether more copies than wanted are no fault.</param>
public sealed record RectAsk(bool MayTurn, bool Guillotine = false, int Stages = 0, bool? FirstUpright = null, bool MoreAllowed = false);
