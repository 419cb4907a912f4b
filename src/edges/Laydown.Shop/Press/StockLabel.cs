namespace Laydown.Shop.Press;

/// <summary>A label of a lot.</summary>
/// <param name="LotId">The lot.</param>
/// <param name="Name">What it is.</param>
/// <param name="Size">Its size in words, with unit.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Since">The day it came, or was cut.</param>
/// <param name="Note">Where it comes from, or null.</param>
/// <param name="PagePath">Address of its page, for the code; the path alone where nobody says where the pages are.</param>
public sealed record StockLabel(string LotId, string Name, string Size, string Place, DateOnly Since, string? Note, string PagePath);
