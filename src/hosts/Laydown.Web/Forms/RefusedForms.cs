using System.Collections.Concurrent;
using System.Security.Cryptography;

namespace Laydown.Web.Forms;

/// <summary>Keeps the last forms that were refused till the page shows them, each under a mark of its own, so that nobody sees what another typed.</summary>
public sealed class RefusedForms
{
    /// <summary>So many are kept; the oldest go first.</summary>
    public const int Most = 200;

    private readonly ConcurrentDictionary<string, RefusedForm> kept = new(StringComparer.Ordinal);
    private readonly ConcurrentQueue<string> order = new();

    /// <summary>Keeps a form.</summary>
    /// <returns>The mark it is found by.</returns>
    public string Keep(RefusedForm form)
    {
        string mark = RandomNumberGenerator.GetHexString(16, lowercase: true);
        kept[mark] = form;
        order.Enqueue(mark);
        while (order.Count > Most && order.TryDequeue(out string? oldest))
            kept.TryRemove(oldest, out _);
        return mark;
    }

    /// <summary>The form of a mark; null for none, and for one that is gone.</summary>
    public RefusedForm? Find(string? mark) => mark is not null && kept.TryGetValue(mark, out RefusedForm? form) ? form : null;
}
