namespace Laydown.Layout.Hands;

/// <summary>What a person does to a layout.</summary>
public enum HandVerb
{
    /// <summary>Takes a sheet or a piece in hand and changes nothing.</summary>
    Look,

    /// <summary>Lays a piece at another place of its sheet.</summary>
    Move,

    /// <summary>Turns a piece about its middle: by a quarter counter-clockwise, by a half where it may not lie on its side.</summary>
    Turn,

    /// <summary>Keeps a piece where it lies.</summary>
    Lock,

    /// <summary>Lets a locked piece go.</summary>
    Unlock,

    /// <summary>Pulls a piece to another sheet.</summary>
    Pull,

    /// <summary>Takes a piece off its sheet.</summary>
    TakeOff,

    /// <summary>Puts a piece that has no place onto a sheet.</summary>
    Put,

    /// <summary>Makes one of several equal sheets a sheet of its own.</summary>
    Split,

    /// <summary>Adds a bare sheet.</summary>
    AddSheet,

    /// <summary>Clears a sheet of all that is not locked.</summary>
    Clear,

    /// <summary>Locks every piece of a sheet.</summary>
    LockSheet,

    /// <summary>Lets every piece of a sheet go.</summary>
    UnlockSheet,
}
