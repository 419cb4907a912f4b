namespace Laydown.Demo.Art;

/// <summary>Cuts of the type that the observatory uses.</summary>
internal enum Face
{
    /// <summary>Regular.</summary>
    Regular,

    /// <summary>Bold.</summary>
    Bold,

    /// <summary>Black.</summary>
    Black,
}
