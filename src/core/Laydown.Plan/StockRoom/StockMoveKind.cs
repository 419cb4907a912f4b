namespace Laydown.Plan.StockRoom;

/// <summary>What is done in the stock room.</summary>
public enum StockMoveKind
{
    /// <summary>Goods come in: a lot more, or more of a lot.</summary>
    Receive,

    /// <summary>Kept back for a run.</summary>
    Reserve,

    /// <summary>No longer kept back for a run.</summary>
    Release,

    /// <summary>Taken for a run, or spoilt.</summary>
    Consume,

    /// <summary>Counted: what is there is what was counted.</summary>
    Count,

    /// <summary>Put to another place.</summary>
    Place,

    /// <summary>A usable rest of a run comes in.</summary>
    Offcut,

    /// <summary>Brought back: what was taken for a run and not used.</summary>
    Return,
}
