namespace Laydown.Optics.Panels;

/// <summary>Why a pixel cannot show both wanted colours.</summary>
public enum UnreachableReason
{
    /// <summary>It can, to 3 ΔE00 in both views.</summary>
    Reached = 0,

    /// <summary>The day colour alone is lighter than white and inks get.</summary>
    DayTooLight = 1,

    /// <summary>The day colour alone is darker than the ink limits let it become.</summary>
    DayTooDark = 2,

    /// <summary>The day colour alone is more colourful than the inks.</summary>
    DayTooColourful = 3,

    /// <summary>The night colour alone is brighter than the panel gets.</summary>
    NightTooBright = 4,

    /// <summary>The night colour alone is darker than the inks close the panel.</summary>
    NightTooDark = 5,

    /// <summary>The night colour alone is more colourful than the inks.</summary>
    NightTooColourful = 6,

    /// <summary>Each is within reach, but day ink dark enough for the day lets too little light through at night.</summary>
    DayHoldsLightBack = 7,

    /// <summary>Each is within reach, but the day colour filters the night's hue away.</summary>
    DayFiltersHue = 8,

    /// <summary>Each is within reach; the rest is the trade between the views.</summary>
    Traded = 9,
}
