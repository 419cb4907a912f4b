namespace Laydown.Layout.Repeats;

/// <summary>About which edge of the sheet it is turned for its second face.</summary>
public enum TurnedAbout
{
    /// <summary>Whichever lets the faces lie less apart.</summary>
    Least,

    /// <summary>The long edges stay long edges of the same side: about a line along them.</summary>
    LongEdge,

    /// <summary>About a line along the short edges.</summary>
    ShortEdge,
}
