namespace Laydown.Intake.Artwork;

/// <summary>Walks along a straight line of a grey picture, for measuring bars and modules.</summary>
/// <param name="picture">The picture.</param>
/// <param name="x">Where the line starts, pixels.</param>
/// <param name="y">Where the line starts, pixels.</param>
/// <param name="dx">Step across; a step is 1 pixel long.</param>
/// <param name="dy">Step down.</param>
internal readonly struct CodeLine(GreyPicture picture, double x, double y, double dx, double dy)
{
    /// <summary>Whether the pixel at a step is dark.</summary>
    public bool IsDark(int step) => picture.IsDark((int)Math.Floor(x + (dx * step)), (int)Math.Floor(y + (dy * step)));

    /// <summary>Steps from <paramref name="from"/> to the first pixel that is dark or light as asked; <paramref name="most"/> where none comes.</summary>
    public int To(bool dark, int from, int most)
    {
        int step = from;
        while (step - from < most && IsDark(step) != dark)
            step++;
        return step - from;
    }
}
