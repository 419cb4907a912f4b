namespace Laydown.Layout.Sheets;

/// <summary>How sheets are cut apart.</summary>
public enum CutProcess
{
    /// <summary>Router or knife: any place.</summary>
    Free,

    /// <summary>Saw or guillotine: from edge to edge.</summary>
    Guillotine,
}
