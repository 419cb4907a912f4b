namespace Laydown.Shop.Press;

/// <summary>Writes papers of the stock room.</summary>
public interface IPressPapers
{
    /// <summary>Labels as A4 PDF, ten on a page, each with a code that opens the lot's page. The same labels give the same bytes.</summary>
    /// <param name="shopName">Name of the shop.</param>
    /// <param name="labels">At least one.</param>
    byte[] Labels(string shopName, IReadOnlyList<StockLabel> labels);
}
