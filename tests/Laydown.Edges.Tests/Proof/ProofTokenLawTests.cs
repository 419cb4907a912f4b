using System.Security.Cryptography;
using System.Text;
using Laydown.Shop.Proof;

namespace Laydown.Edges.Tests.Proof;

/// <summary>A token says what it was made of and nothing that was changed is taken.</summary>
public sealed class ProofTokenLawTests
{
    private static readonly byte[] Key = [.. Enumerable.Range(0, 32).Select(i => (byte)(7 * i))];

    [Fact]
    public void What_was_written_is_read()
    {
        ProofLink link = ProofSamples.Link("k3w9xq2mna");
        Assert.Equal(new ProofClaim(link.Id, link.ItemId, link.LookId, link.Expires), ProofToken.Read(Key, ProofToken.Write(Key, link)));
    }

    [Fact]
    public void The_signature_is_the_HMAC_of_link_item_look_and_expiry()
    {
        string[] parts = ProofToken.Write(Key, ProofSamples.Link("k3w9xq2mna")).Split('.');
        byte[] signed = Encoding.ASCII.GetBytes("laydown proof link 1\nk3w9xq2mna\nTW-1042-1\nL-1\n1796904000");
        Assert.Equal(Convert.ToBase64String(HMACSHA256.HashData(Key, signed)).TrimEnd('=').Replace('+', '-').Replace('/', '_'), parts[1]);
    }

    [Fact]
    public void A_change_of_any_character_breaks_it()
    {
        string token = ProofToken.Write(Key, ProofSamples.Link("k3w9xq2mna"));
        for (int at = 0; at < token.Length; at++)
        {
            foreach (char other in "Ax9-_.=")
            {
                if (token[at] != other)
                    Assert.Null(ProofToken.Read(Key, token[..at] + other + token[(at + 1)..]));
            }

            Assert.Null(ProofToken.Read(Key, token.Remove(at, 1)));
        }
    }

    [Fact]
    public void Another_key_reads_nothing()
    {
        byte[] other = [.. Key];
        other[31] ^= 1;
        Assert.Null(ProofToken.Read(other, ProofToken.Write(Key, ProofSamples.Link("k3w9xq2mna"))));
    }

    [Theory]
    [InlineData("")]
    [InlineData(".")]
    [InlineData("..")]
    [InlineData("a.b.c")]
    [InlineData("../../store/shop.db")]
    [InlineData("' OR 1=1 --")]
    [InlineData("<script>alert(1)</script>")]
    public void What_is_no_token_reads_as_nothing(string token) => Assert.Null(ProofToken.Read(Key, token));

    [Fact]
    public void A_very_long_one_is_not_looked_at() => Assert.Null(ProofToken.Read(Key, new string('a', 100_000) + "." + new string('b', 100_000)));

    [Fact]
    public void A_short_key_is_refused() => Assert.Throws<ArgumentException>(() => ProofToken.Write(Key.AsSpan(0, 16), ProofSamples.Link("k3w9xq2mna")));
}
