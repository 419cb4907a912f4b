using System.Security.Cryptography;
using System.Text;
using Laydown.Artwork.Pages;

namespace Laydown.Shop.Orders;

/// <summary>Front and back that came as two files, taken as one: the back's first page is page 2, further pages of the front's file follow it.</summary>
public static class JoinedArtwork
{
    /// <summary>The two files as one.</summary>
    /// <param name="front">The front's file.</param>
    /// <param name="back">The back's file; its first page alone is used.</param>
    public static ArtworkFile Of(ArtworkFile front, ArtworkFile back)
    {
        ArgumentNullException.ThrowIfNull(front);
        ArgumentNullException.ThrowIfNull(back);
        IEnumerable<ArtworkPage> pages = [.. front.Pages.Take(1), .. back.Pages.Take(1), .. front.Pages.Skip(1)];
        return front with
        {
            Bytes = front.Bytes + back.Bytes,
            Sha256 = Sha256(front.Sha256, back.Sha256),
            Pages = [.. pages.Select((p, i) => p with { Number = i + 1 })],
        };
    }

    /// <summary>One hash for both files.</summary>
    /// <param name="front">SHA-256 of the front's file, lower-case hex.</param>
    /// <param name="back">That of the back's.</param>
    public static string Sha256(string front, string back) => Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(Invariant($"{front} {back}"))));
}
