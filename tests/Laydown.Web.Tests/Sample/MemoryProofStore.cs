using Laydown.Shop.Proof;

namespace Laydown.Web.Tests.Sample;

/// <summary>Proof links and answers in memory, with the rules of <see cref="IProofStore"/>.</summary>
internal sealed class MemoryProofStore : IProofStore
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, ProofLink> links = new(StringComparer.Ordinal);
    private readonly List<ProofAnswer> answers = [];

    public Task SaveLinkAsync(ProofLink link, CancellationToken cancellation)
    {
        lock (gate)
            links[link.Id] = link;
        return Task.CompletedTask;
    }

    public Task<ProofLink?> LinkAsync(string linkId, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult(links.GetValueOrDefault(linkId));
    }

    public Task<IReadOnlyList<ProofLink>> LinksAsync(string? itemId, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<ProofLink>>([.. links.Values.Where(l => itemId is null || l.ItemId == itemId).OrderByDescending(l => l.Made)]);
    }

    public Task<bool> AddAnswerAsync(ProofAnswer answer, int mostInAll, int mostLately, DateTimeOffset lately, CancellationToken cancellation)
    {
        lock (gate)
        {
            List<ProofAnswer> same = [.. answers.Where(a => a.LinkId == answer.LinkId)];
            if (same.Count >= mostInAll || same.Count(a => a.At >= lately) >= mostLately)
                return Task.FromResult(false);
            answers.Add(answer);
            return Task.FromResult(true);
        }
    }

    public Task<IReadOnlyList<ProofAnswer>> AnswersAsync(string itemId, CancellationToken cancellation)
    {
        lock (gate)
            return Task.FromResult<IReadOnlyList<ProofAnswer>>([.. answers.Where(a => a.ItemId == itemId)]);
    }

    public Task<bool> SettleAsync(string itemId, string answerId, bool done, CancellationToken cancellation)
    {
        lock (gate)
        {
            int at = answers.FindIndex(a => a.Id == answerId && a.ItemId == itemId);
            if (at >= 0)
                answers[at] = answers[at] with { Done = done };
            return Task.FromResult(at >= 0);
        }
    }
}
