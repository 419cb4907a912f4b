using Laydown.Measures;

namespace Laydown.Web.Forms;

/// <summary>The fields of a form: named once for the page that shows them and for what takes them in.</summary>
/// <param name="form">Name of the form, unique on its page.</param>
/// <param name="fields">Its fields in the order of the page.</param>
public sealed class FormFields(string form, params IReadOnlyList<FormField> fields)
{
    /// <summary>Name of the form.</summary>
    public string Form { get; } = form;

    /// <summary>The field sent by this name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The form has no such field.</exception>
    public FormField this[string name] => fields.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.Ordinal))
        ?? throw new ArgumentOutOfRangeException(nameof(name), name, Invariant($"Wanted a field of the form {Form}: {string.Join(", ", fields.Select(f => f.Name))}."));

    /// <summary>The form with what was typed and what speaks against it: each fault at the first field it means, in the order of the page, those of the whole first.</summary>
    /// <param name="sent">What was sent, by the name of a field; null for what was not.</param>
    /// <param name="faults">What speaks against it.</param>
    public RefusedForm Refused(Func<string, string?> sent, IReadOnlyList<InputFault> faults)
    {
        ArgumentNullException.ThrowIfNull(sent);
        return new(
            Form,
            fields.Select(f => (f.Name, Sent: sent(f.Name))).Where(f => f.Sent is not null).ToDictionary(f => f.Name, f => f.Sent!, StringComparer.Ordinal),
            [.. faults.Select(fault => new RefusedField(fields.FirstOrDefault(f => f.IsMeant(fault)), fault)).OrderBy(f => fields.TakeWhile(o => o != f.Field).Count() % fields.Count)]);
    }
}
