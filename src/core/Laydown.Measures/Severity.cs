namespace Laydown.Measures;

/// <summary>How bad a finding is.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing to do.</summary>
    Note,

    /// <summary>May spoil the piece; someone should look.</summary>
    Warn,

    /// <summary>The item is held back until this is mended.</summary>
    Stop,
}
