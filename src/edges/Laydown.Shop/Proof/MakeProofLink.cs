using System.Security.Cryptography;
using Laydown.Measures;

namespace Laydown.Shop.Proof;

/// <summary>Makes a link by which a customer sees a look.</summary>
/// <param name="key">The key that signs.</param>
/// <param name="store">Keeps it.</param>
/// <param name="looks">Tells which looks there are.</param>
/// <param name="clock">Tells the time.</param>
public sealed class MakeProofLink(ProofKey key, IProofStore store, ProofPlanes looks, TimeProvider clock)
{
    /// <summary>Longest life of a link, days.</summary>
    public const int MostDays = 366;

    private const int MostWho = 200;
    private const string IdLetters = "abcdefghjkmnpqrstuvwxyz23456789";

    /// <summary>Makes the link and keeps it.</summary>
    /// <param name="itemId">The item.</param>
    /// <param name="lookId">Its look.</param>
    /// <param name="days">Days until it ends, 1 to <see cref="MostDays"/>.</param>
    /// <param name="who">Whom it is for, in the shop's words; may be empty.</param>
    /// <param name="cancellation">Stops before saving.</param>
    /// <returns>The link with its token, or why not.</returns>
    public async Task<Reading<SentLink>> MakeAsync(string itemId, string lookId, int days, string who, CancellationToken cancellation)
    {
        const string file = "proof link";
        List<InputFault> faults = [];
        if (looks.Find(itemId, lookId) is null)
            faults.Add(new(file, null, "look", Invariant($"no look '{PlainWords.Cut(lookId)}' of item '{PlainWords.Cut(itemId)}'"), "a look of this shop; laydown look lists them"));
        if (days is < 1 or > MostDays)
            faults.Add(new(file, null, "days", Invariant($"{days}"), Invariant($"1 to {MostDays}")));
        if (who.Length > MostWho)
            faults.Add(new(file, null, "for", Invariant($"{who.Length} characters"), Invariant($"at most {MostWho}")));
        if (faults.Count > 0)
            return Reading.Refused<SentLink>(faults);

        DateTimeOffset now = clock.GetUtcNow();
        DateTimeOffset expires = DateTimeOffset.FromUnixTimeSeconds(now.AddDays(days).ToUnixTimeSeconds());
        ProofLink link = new(RandomNumberGenerator.GetString(IdLetters, 10), itemId, lookId, PlainWords.Line(who), now, expires, null);
        string token = ProofToken.Write(key.Read(), link);
        await store.SaveLinkAsync(link, cancellation);
        return Reading.Of(new SentLink(link, token));
    }
}
