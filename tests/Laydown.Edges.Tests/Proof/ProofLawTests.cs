using Laydown.Edges.Tests.Store;
using Laydown.Edges.Tests.UseCases;
using Laydown.Intake.Artwork;
using Laydown.Intake.Colour;
using Laydown.Intake.Layers;
using Laydown.Measures;
using Laydown.Output.Layers;
using Laydown.Shop;
using Laydown.Shop.Layers;
using Laydown.Shop.Proof;
using Laydown.Store;

namespace Laydown.Edges.Tests.Proof;

/// <summary>Links from making to end, answers from page to shop.</summary>
public sealed class ProofLawTests : IDisposable
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly SizeMm Size = new(1200, 800);
    private readonly TempFolder temp = new();
    private readonly MovingClock clock = new();
    private readonly ShopBench bench = new();

    public void Dispose()
    {
        temp.Dispose();
        bench.Dispose();
    }

    [Fact]
    public async Task A_link_shows_its_look_until_it_ends()
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "visitor centre", None)).Value;
        Assert.Equal(sent.Link, (await proof.Open.OpenAsync(sent.Token, None)).Link);
        clock.Now += TimeSpan.FromDays(3) - TimeSpan.FromSeconds(1);
        Assert.Equal(ProofLinkState.Open, (await proof.Open.OpenAsync(sent.Token, None)).State);
        clock.Now += TimeSpan.FromSeconds(1);
        Assert.Equal(new(ProofLinkState.Expired, null), await proof.Open.OpenAsync(sent.Token, None));
    }

    [Fact]
    public async Task A_link_that_was_withdrawn_shows_and_takes_nothing()
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        DateTimeOffset first = (await proof.RevokeLink.RevokeAsync(sent.Link.Id, None)).Value.Withdrawn!.Value;
        Assert.Equal(new(ProofLinkState.Withdrawn, null), await proof.Open.OpenAsync(sent.Token, None));
        Assert.False((await proof.Answer.AnswerAsync(sent.Token, Approved, Size, None)).IsTaken);
        clock.Now += TimeSpan.FromHours(1);
        Assert.Equal(first, (await proof.RevokeLink.RevokeAsync(sent.Link.Id, None)).Value.Withdrawn);
        Assert.Empty((await proof.Answers.ShowAsync(ProofSamples.Item, None)).All);
    }

    [Fact]
    public void The_key_is_made_once_and_only_its_owner_may_read_it()
    {
        ShopFolder folder = new(temp.Path);
        byte[] key = new ProofKey(folder).Read();
        Assert.Equal(32, key.Length);
        Assert.True(key.Distinct().Count() > 8, "Found a key of few different bytes; wanted a random one.");
        Assert.Equal(key, new ProofKey(folder).Read());
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(new ProofKey(folder).FilePath));
        Assert.Equal(["proof.key"], Directory.GetFiles(Path.Combine(temp.Path, "store")).Select(Path.GetFileName));
    }

    [Fact]
    public void A_key_of_another_length_is_refused_in_words()
    {
        ProofKey key = new(new(temp.Path));
        Directory.CreateDirectory(Path.GetDirectoryName(key.FilePath)!);
        File.WriteAllBytes(key.FilePath, [1, 2, 3]);
        Assert.Contains("3 bytes; wanted 32", Assert.Throws<InvalidDataException>(() => key.Read()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tokens_of_another_shop_are_unknown_here()
    {
        ProofServices proof = await OpenAsync();
        using TempFolder elsewhere = new();
        Directory.CreateDirectory(Path.Combine(elsewhere.Path, "looks", ProofSamples.Item, "L-1"));
        File.WriteAllBytes(Path.Combine(elsewhere.Path, "looks", ProofSamples.Item, "L-1", "planes.raw"), [1]);
        SqliteShopStore store = new(new ShopFolder(elsewhere.Path).StoreFile);
        await store.OpenAsync(None);
        ProofServices other = ProofServices.Of(new(elsewhere.Path), Layers(elsewhere.Path), new(bench.Catalogue, bench.Store, Pairs), new SqliteProofStore(new ShopFolder(elsewhere.Path).StoreFile), clock);
        SentLink sent = (await other.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        Assert.Equal(ProofOutcome.Unknown, await proof.Open.OpenAsync(sent.Token, None));
    }

    [Fact]
    public async Task An_approval_freezes_the_planes_it_saw()
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        ProofAnswer answer = (await proof.Answer.AnswerAsync(sent.Token, Approved, Size, None)).Value;
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("planes one"u8)), answer.PlanesSha256);
        ProofAnswers told = await proof.Answers.ShowAsync(ProofSamples.Item, None);
        Assert.Equal(ApprovalState.Holds, told.State);
        Assert.True(told.IsApproved("L-1"));
        Assert.False(told.IsApproved("L-2"));

        // Other planes under the same name ask again.
        await File.WriteAllBytesAsync(Planes("L-1"), "planes one, mended"u8.ToArray());
        Assert.Equal(ApprovalState.Changed, (await proof.Answers.ShowAsync(ProofSamples.Item, None)).State);
    }

    [Fact]
    public async Task A_change_asked_for_later_questions_the_approval_until_it_is_dealt_with()
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        await proof.Answer.AnswerAsync(sent.Token, Approved, Size, None);
        clock.Now += TimeSpan.FromMinutes(5);
        ProofAnswer change = (await proof.Answer.AnswerAsync(sent.Token, new(ProofVerdict.Change, "Ada", "moon larger", new(600, 120, PinView.Night)), Size, None)).Value;
        Assert.Equal(ApprovalState.Questioned, (await proof.Answers.ShowAsync(ProofSamples.Item, None)).State);
        Assert.True(await proof.Settle.SettleAsync(ProofSamples.Item, change.Id, true, None));
        Assert.Equal(ApprovalState.Holds, (await proof.Answers.ShowAsync(ProofSamples.Item, None)).State);
        Assert.False(await proof.Settle.SettleAsync("TW-1", change.Id, false, None));
    }

    [Fact]
    public async Task Hostile_words_are_kept_as_words_without_control_characters()
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        string hostile = "<script>alert(1)</script>\u001b[2J\u0000\u202Egnp.exe\r\nsecond \uD83C line'; DROP TABLE ProofAnswers;--";
        ProofAnswer kept = (await proof.Answer.AnswerAsync(sent.Token, new(ProofVerdict.Change, "A\ndmin\u0007", hostile, null), Size, None)).Value;
        Assert.Equal("A dmin", kept.From);
        Assert.Equal("<script>alert(1)</script>[2Jgnp.exe\nsecond \uFFFD line'; DROP TABLE ProofAnswers;--", kept.Text);
        Assert.Equal(kept, Assert.Single((await proof.Answers.ShowAsync(ProofSamples.Item, None)).All));
    }

    [Fact]
    public async Task No_more_than_so_many_answers_are_taken_at_once()
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        Reading<ProofAnswer>[] all = await Task.WhenAll(Enumerable.Range(0, AnswerProof.MostLately + 5).Select(i =>
            Task.Run(() => proof.Answer.AnswerAsync(sent.Token, new(ProofVerdict.Change, "", Invariant($"{i}"), null), Size, None))));
        Assert.Equal(AnswerProof.MostLately, all.Count(a => a.IsTaken));
        clock.Now += TimeSpan.FromMinutes(11);
        Assert.True((await proof.Answer.AnswerAsync(sent.Token, Approved, Size, None)).IsTaken);
    }

    public static TheoryData<ProofReply, string> Refused() => new()
    {
        { new(ProofVerdict.Change, "", "   \u0001 ", null), "comment" },
        { new(ProofVerdict.Change, "", new('x', AnswerProof.MostText + 1), null), "comment" },
        { new(ProofVerdict.Change, new('x', AnswerProof.MostFrom + 1), "x", null), "name" },
        { new(ProofVerdict.Change, "", "x", new(-0.1, 10, PinView.Day)), "pin" },
        { new(ProofVerdict.Change, "", "x", new(10, 800.5, PinView.Day)), "pin" },
        { new(ProofVerdict.Change, "", "x", new(double.NaN, 10, PinView.Day)), "pin" },
        { new(ProofVerdict.Change, "", "x", new(1, 10, (PinView)7)), "pin" },
        { new((ProofVerdict)9, "", "x", null), "verdict" },
    };

    [Theory, MemberData(nameof(Refused))]
    public async Task What_cannot_be_an_answer_is_refused_by_field(ProofReply reply, string field)
    {
        ProofServices proof = await OpenAsync();
        SentLink sent = (await proof.MakeLink.MakeAsync(ProofSamples.Item, "L-1", 3, "", None)).Value;
        Assert.Equal(field, Assert.Single((await proof.Answer.AnswerAsync(sent.Token, reply, Size, None)).Faults).Field);
        Assert.Empty((await proof.Answers.ShowAsync(ProofSamples.Item, None)).All);
    }

    [Theory]
    [InlineData(ProofSamples.Item, "L-9", 3, "look")]
    [InlineData("../..", "L-1", 3, "look")]
    [InlineData(ProofSamples.Item, "L-1", 0, "days")]
    [InlineData(ProofSamples.Item, "L-1", 9999, "days")]
    public async Task A_link_to_nothing_or_without_end_is_refused(string item, string look, int days, string field)
    {
        ProofServices proof = await OpenAsync();
        Assert.Equal(field, Assert.Single((await proof.MakeLink.MakeAsync(item, look, days, "", None)).Faults).Field);
        Assert.Empty(await proof.ListLinks.ListAsync(null, None));
    }

    private static ProofReply Approved => new(ProofVerdict.Approved, "Ada", "", null);

    private string Planes(string look) => Path.Combine(temp.Path, "looks", ProofSamples.Item, look, "planes.raw");

    private async Task<ProofServices> OpenAsync()
    {
        foreach (string look in (string[])["L-1", "L-2"])
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Planes(look))!);
            await File.WriteAllBytesAsync(Planes(look), look == "L-1" ? "planes one"u8.ToArray() : "planes two"u8.ToArray());
        }

        ShopFolder folder = new(temp.Path);
        await new SqliteShopStore(folder.StoreFile).OpenAsync(None);
        return ProofServices.Of(folder, Layers(temp.Path), new(bench.Catalogue, bench.Store, Pairs), new SqliteProofStore(folder.StoreFile), clock);
    }

    private static PairPictures Pairs { get; } = new(new IntakeLimits(Path.Combine(Path.GetTempPath(), "laydown-pairs")));

    private LayerServices Layers(string root) => LayerServices.Of(
        new LookShelf(new(root)), bench.Catalogue, bench.Store, new ItemPlaneFiles(new ShopBench.FakeRenderer()), Pairs, new LookPictures(), new ColourFiles(), clock);

    private sealed class MovingClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = ProofSamples.Noon;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
