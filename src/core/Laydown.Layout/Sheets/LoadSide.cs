namespace Laydown.Layout.Sheets;

/// <summary>Where the one who loads stands.</summary>
public enum LoadSide
{
    /// <summary>Before the front lay; all lanes are as near.</summary>
    Front,

    /// <summary>Beside the belt at its origin; sheets lie as near the origin as can be, and the far lanes are loaded first.</summary>
    Origin,

    /// <summary>Beside the belt across from its origin; sheets lie as far from the origin as can be, and the lanes near it are loaded first.</summary>
    Far,
}
