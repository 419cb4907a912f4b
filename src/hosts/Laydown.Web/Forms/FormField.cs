using Laydown.Measures;

namespace Laydown.Web.Forms;

/// <summary>One field of a form.</summary>
/// <param name="Name">The name it is sent by.</param>
/// <param name="Id">Its id on the page, unique there.</param>
/// <param name="Label">Its label, with the unit.</param>
/// <param name="Paths">Fields of the record it fills, as faults name them; those below one count as it.</param>
public sealed record FormField(string Name, string Id, string Label, params IReadOnlyList<string> Paths)
{
    /// <summary>Whether a fault speaks of this field: by its own name, or by a path it fills.</summary>
    public bool IsMeant(InputFault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return string.Equals(fault.Field, Name, StringComparison.Ordinal)
            || Paths.Any(p => string.Equals(fault.Field, p, StringComparison.Ordinal) || fault.Field.StartsWith(p + "/", StringComparison.Ordinal));
    }
}
