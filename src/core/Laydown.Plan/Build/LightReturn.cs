namespace Laydown.Plan.Build;

/// <summary>What returns room light from behind a layer.</summary>
internal enum LightReturn
{
    /// <summary>Nothing: black comes first.</summary>
    Nothing,

    /// <summary>White where its mask lies, black in its windows.</summary>
    Parts,

    /// <summary>Nothing in the piece: the wall or the box behind it.</summary>
    Wall,

    /// <summary>White, with the wall in its windows if it has any, or the sheet.</summary>
    White,
}
