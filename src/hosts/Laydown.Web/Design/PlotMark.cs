namespace Laydown.Web.Design;

/// <summary>How a series is drawn.</summary>
public enum PlotMark
{
    /// <summary>A line through its points.</summary>
    Line,

    /// <summary>A closed line.</summary>
    Outline,

    /// <summary>A mark at each point.</summary>
    Dots,

    /// <summary>A bar from the axis to each point.</summary>
    Bars,
}
