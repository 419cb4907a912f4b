using System.Security.Cryptography;
using Laydown.Measures;

namespace Laydown.Shop.Proof;

/// <summary>Takes a customer's answer in.</summary>
/// <param name="open">Follows tokens.</param>
/// <param name="store">Keeps answers.</param>
/// <param name="planes">Tells what exactly is shown.</param>
/// <param name="clock">Tells the time.</param>
public sealed class AnswerProof(OpenProof open, IProofStore store, ProofPlanes planes, TimeProvider clock)
{
    /// <summary>Longest comment, characters.</summary>
    public const int MostText = 2000;

    /// <summary>Longest name, characters.</summary>
    public const int MostFrom = 80;

    /// <summary>Most answers of one link in ten minutes.</summary>
    public const int MostLately = 20;

    /// <summary>Most answers of one link in all.</summary>
    public const int MostInAll = 500;

    private const string File = "answer";
    private static readonly TimeSpan Lately = TimeSpan.FromMinutes(10);

    /// <summary>Keeps the answer, or says why not; a link that shows nothing takes nothing.</summary>
    /// <param name="token">The token of the link.</param>
    /// <param name="reply">The answer.</param>
    /// <param name="size">Finished size of the piece, mm: pins lie within it.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<ProofAnswer>> AnswerAsync(string token, ProofReply reply, SizeMm size, CancellationToken cancellation)
    {
        if ((await open.OpenAsync(token, cancellation)).Link is not { } link)
            return Refuse("link", "one that is closed", "an open link");
        (string from, string text) = (PlainWords.Line(reply.From), PlainWords.Lines(reply.Text));
        List<InputFault> faults = [.. Faults(reply, from, text, size)];
        if (faults.Count > 0)
            return Reading.Refused<ProofAnswer>(faults);
        if (await planes.Sha256Async(link.ItemId, link.LookId, cancellation) is not { } sha256)
            return Refuse("look", "one that is no longer there", "the look that is shown");

        DateTimeOffset now = clock.GetUtcNow();
        ProofAnswer answer = new(
            RandomNumberGenerator.GetHexString(16, lowercase: true), link.Id, link.ItemId, link.LookId, now, reply.Verdict, from, text, reply.Pin, sha256,
            Done: reply.Verdict == ProofVerdict.Approved);
        return await store.AddAnswerAsync(answer, MostInAll, MostLately, now - Lately, cancellation)
            ? Reading.Of(answer)
            : Refuse("answers", "too many at once", Invariant($"at most {MostLately} in ten minutes and {MostInAll} in all; please wait a little, or call the shop"));
    }

    private static IEnumerable<InputFault> Faults(ProofReply reply, string from, string text, SizeMm size)
    {
        if (!Enum.IsDefined(reply.Verdict))
            yield return Fault("verdict", "neither of both", "approved, or to be changed");
        if (from.Length > MostFrom)
            yield return Fault("name", Invariant($"{from.Length} characters"), Invariant($"at most {MostFrom}"));
        if (text.Length > MostText)
            yield return Fault("comment", Invariant($"{text.Length} characters"), Invariant($"at most {MostText}"));
        if (reply.Verdict == ProofVerdict.Change && text.Length == 0)
            yield return Fault("comment", "nothing", "a few words: what is to be changed");
        bool inside = reply.Pin is null || (reply.Pin.XMm >= 0 && reply.Pin.XMm <= size.WidthMm && reply.Pin.YMm >= 0 && reply.Pin.YMm <= size.HeightMm && Enum.IsDefined(reply.Pin.View));
        if (!inside)
            yield return Fault("pin", "a place off the piece", Invariant($"a place on the piece, {size}"));
    }

    private static InputFault Fault(string field, string found, string wanted) => new(File, null, field, found, wanted);

    private static Reading<ProofAnswer> Refuse(string field, string found, string wanted) => Reading.Refused<ProofAnswer>(Fault(field, found, wanted));
}
