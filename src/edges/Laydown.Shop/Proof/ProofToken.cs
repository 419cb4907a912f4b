using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Laydown.Shop.Proof;

/// <summary>The token of a proof link: what it shows and until when, signed, so that nobody can make or change one without the shop's key.</summary>
/// <remarks>
/// <c>base64url(link ⏎ item ⏎ look ⏎ expiry in Unix seconds) "." base64url(HMAC-SHA256)</c> [RFC2104] [RFC4648]; the signed text begins with a line of its own, so that the
/// key can never sign anything else. Signatures are compared in constant time. Only the one spelling that <see cref="Write"/> gives is taken.
/// </remarks>
public static class ProofToken
{
    /// <summary>Bytes of a key.</summary>
    public const int KeyBytes = 32;

    /// <summary>Longest token that is looked at, characters.</summary>
    public const int MostCharacters = 512;

    private const string Purpose = "laydown proof link 1\n";

    /// <summary>The token of a link.</summary>
    /// <param name="key">The shop's key, <see cref="KeyBytes"/> bytes.</param>
    /// <param name="link">The link.</param>
    /// <exception cref="ArgumentException">The key has another length.</exception>
    public static string Write(ReadOnlySpan<byte> key, ProofLink link)
    {
        byte[] body = Encoding.UTF8.GetBytes(Invariant($"{link.Id}\n{link.ItemId}\n{link.LookId}\n{link.Expires.ToUnixTimeSeconds()}"));
        return Invariant($"{Base64Url.EncodeToString(body)}.{Base64Url.EncodeToString(Sign(key, body))}");
    }

    /// <summary>What a token says, or null when the shop did not write it.</summary>
    /// <param name="key">The shop's key.</param>
    /// <param name="token">Anything at all.</param>
    /// <exception cref="ArgumentException">The key has another length.</exception>
    public static ProofClaim? Read(ReadOnlySpan<byte> key, string token)
    {
        int dot = token.Length is > 0 and <= MostCharacters ? token.IndexOf('.', StringComparison.Ordinal) : -1;
        if (dot < 0 || Decoded(token.AsSpan(0, dot)) is not { } body || Decoded(token.AsSpan(dot + 1)) is not { } signature)
            return null;
        return CryptographicOperations.FixedTimeEquals(Sign(key, body), signature) ? Claim(Encoding.UTF8.GetString(body)) : null;
    }

    private static byte[] Sign(ReadOnlySpan<byte> key, byte[] body) => key.Length == KeyBytes
        ? HMACSHA256.HashData(key, [.. Encoding.UTF8.GetBytes(Purpose), .. body])
        : throw new ArgumentException(Invariant($"Key: found {key.Length} bytes; wanted {KeyBytes}."), nameof(key));

    // One spelling for each value: what decodes but would be written otherwise is not taken.
    private static byte[]? Decoded(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || text.ContainsAnyExcept(Letters) || !Base64Url.IsValid(text))
            return null;
        byte[] bytes = Base64Url.DecodeFromChars(text);
        return text.SequenceEqual(Base64Url.EncodeToString(bytes)) ? bytes : null;
    }

    private static ProofClaim? Claim(string body)
    {
        string[] lines = body.Split('\n');
        return lines.Length == 4 && long.TryParse(lines[3], NumberStyles.None, CultureInfo.InvariantCulture, out long seconds)
            ? new(lines[0], lines[1], lines[2], DateTimeOffset.FromUnixTimeSeconds(seconds))
            : null;
    }

    private static System.Buffers.SearchValues<char> Letters { get; } =
        System.Buffers.SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_");
}
