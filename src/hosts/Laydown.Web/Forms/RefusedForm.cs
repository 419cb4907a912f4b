namespace Laydown.Web.Forms;

/// <summary>A form that was refused: what was typed, so that nobody types it again, and what speaks against it.</summary>
/// <param name="Form">Name of the form.</param>
/// <param name="Sent">What was typed, by the name of the field.</param>
/// <param name="Faults">What speaks against it, in the order of the rules; at least one.</param>
public sealed record RefusedForm(string Form, IReadOnlyDictionary<string, string> Sent, IReadOnlyList<RefusedField> Faults)
{
    /// <summary>What was typed into a field; null where it was not sent.</summary>
    public string? Typed(FormField field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return Sent.GetValueOrDefault(field.Name);
    }

    /// <summary>What speaks against a field, in words; null for nothing.</summary>
    public string? Against(FormField field)
    {
        List<string> words = [.. Faults.Where(f => string.Equals(f.Field?.Name, field.Name, StringComparison.Ordinal)).Select(f => f.Words)];
        return words.Count > 0 ? string.Join(' ', words) : null;
    }
}
