using Laydown.Press.Inks;

namespace Laydown.Plan.Runs;

/// <summary>Ink roles in words.</summary>
public static class InkWords
{
    /// <summary>Such as <c>Light cyan</c>.</summary>
    public static string Of(InkRole role) => role switch
    {
        InkRole.LightCyan => "Light cyan",
        InkRole.LightMagenta => "Light magenta",
        _ => role.ToString(),
    };
}
