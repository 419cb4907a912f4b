namespace Laydown.Layout.Jobs;

/// <summary>What pieces are laid out on.</summary>
public enum JobStockKind
{
    /// <summary>A board or an offcut.</summary>
    Board,

    /// <summary>A roll; what is used of its length is to be least.</summary>
    Roll,
}
