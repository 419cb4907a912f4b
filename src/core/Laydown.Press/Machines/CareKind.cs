namespace Laydown.Press.Machines;

/// <summary>What is done to keep a press fit.</summary>
public enum CareKind
{
    /// <summary>A nozzle pattern is printed and looked at.</summary>
    NozzleCheck,

    /// <summary>Heads, caps and wipers are cleaned by hand.</summary>
    Clean,

    /// <summary>White ink in tank or bottle is stirred or shaken.</summary>
    Agitate,

    /// <summary>The pump that keeps white ink moving is looked at.</summary>
    Circulate,

    /// <summary>An ink filter is changed.</summary>
    Filter,

    /// <summary>The waste tank is emptied.</summary>
    WasteTank,

    /// <summary>Guards and stop devices are tried.</summary>
    StopDevices,

    /// <summary>Lamps are measured and their windows wiped.</summary>
    Lamps,

    /// <summary>Anything else, told by its name.</summary>
    Other,
}
