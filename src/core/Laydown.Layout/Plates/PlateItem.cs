namespace Laydown.Layout.Plates;

/// <summary>A pane to be cut; it may be turned.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Width">Width.</param>
/// <param name="Height">Height.</param>
/// <param name="Stack">Its stack: panes of a stack are cut in the order in which they are listed.</param>
internal sealed record PlateItem(string Id, int Width, int Height, int Stack)
{
    internal long Area => (long)Width * Height;
}
