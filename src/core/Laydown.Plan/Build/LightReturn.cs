namespace Laydown.Plan.Build;

/// <summary>What returns room light from behind a layer.</summary>
internal enum LightReturn
{
    /// <summary>Nothing: black comes first.</summary>
    Nothing,

    /// <summary>White, but only where its mask lies.</summary>
    Parts,

    /// <summary>Nothing in the piece: the wall or the box behind it.</summary>
    Wall,

    /// <summary>White or the sheet.</summary>
    White,
}
