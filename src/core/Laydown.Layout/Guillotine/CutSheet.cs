namespace Laydown.Layout.Guillotine;

/// <summary>An open sheet.</summary>
internal struct CutSheet
{
    /// <summary>Its stock; −1 where the slot is not in use.</summary>
    public int Stock;

    /// <summary>In which way its keep-outs are cut out.</summary>
    public int Way;

    /// <summary>First of its roots.</summary>
    public int Root;

    /// <summary>Where it stands in the list of open sheets.</summary>
    public int Place;

    /// <summary>Pieces on it.</summary>
    public int Pieces;

    /// <summary>Area of the pieces on it.</summary>
    public long Area;
}
