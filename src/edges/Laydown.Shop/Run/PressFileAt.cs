namespace Laydown.Shop.Run;

/// <summary>A press file that was made, and how its values are to be read.</summary>
/// <param name="Path">Full path; made by the shop.</param>
/// <param name="Sha256">Its SHA-256 as the manifest has it: what is derived from the file is kept under it.</param>
/// <param name="DropShares">For dots the share of a full laydown of each code, bare first; empty for contone.</param>
public sealed record PressFileAt(string Path, string Sha256, IReadOnlyList<double> DropShares)
{
    /// <summary>Whether it holds dots.</summary>
    public bool IsDots => DropShares.Count > 0;
}
