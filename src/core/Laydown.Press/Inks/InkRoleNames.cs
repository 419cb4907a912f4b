namespace Laydown.Press.Inks;

/// <summary>Names of inks in words, as charts, links and profiles carry them.</summary>
public static class InkRoleNames
{
    /// <summary>The name in words, such as <c>Light Cyan</c>.</summary>
    public static string Of(InkRole role) => role switch
    {
        InkRole.LightCyan => "Light Cyan",
        InkRole.LightMagenta => "Light Magenta",
        _ => role.ToString(),
    };

    /// <summary>The role behind a name, or null; case and blanks do not matter.</summary>
    public static InkRole? Find(string name)
    {
        string plain = name.Replace(" ", "", StringComparison.Ordinal);
        foreach (InkRole role in Enum.GetValues<InkRole>())
        {
            if (string.Equals(role.ToString(), plain, StringComparison.OrdinalIgnoreCase))
                return role;
        }

        return null;
    }
}
