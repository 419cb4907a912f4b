using Laydown.Measures;

namespace Laydown.Web.Forms;

/// <summary>What speaks against a form, at the field it speaks of.</summary>
/// <param name="Field">The field; null where it speaks of the whole.</param>
/// <param name="Fault">What was found and what is wanted.</param>
public sealed record RefusedField(FormField? Field, InputFault Fault)
{
    /// <summary>As it stands at the field.</summary>
    public string Words => Invariant($"Found {Fault.Found}; wanted {Fault.Wanted}.");
}
