namespace Laydown.Shop.Orders;

/// <summary>How far an item is; states named as in CIP4 XJDF where it has one [XJDF21].</summary>
public enum ItemState
{
    /// <summary>Taken, not yet looked at.</summary>
    Waiting,

    /// <summary>Held back by a stop: a finding or a fault.</summary>
    Stopped,

    /// <summary>Checked and fit, not yet in a run.</summary>
    Ready,

    /// <summary>In a planned run.</summary>
    Planned,

    /// <summary>Its press files are made.</summary>
    Completed,
}
