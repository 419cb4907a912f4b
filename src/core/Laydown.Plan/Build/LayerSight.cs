namespace Laydown.Plan.Build;

/// <summary>What one viewer sees of one layer.</summary>
/// <param name="Day">By the light of the room, the lamp off.</param>
/// <param name="Lit">By the light of the lamp alone; nothing where there is none.</param>
public readonly record struct LayerSight(Sight Day, Sight Lit)
{
    /// <summary>Whether anything of it is seen, by day or lit.</summary>
    public bool IsSeen => Day != Sight.Not || Lit != Sight.Not;
}
