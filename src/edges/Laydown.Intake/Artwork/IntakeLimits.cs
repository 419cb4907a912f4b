namespace Laydown.Intake.Artwork;

/// <summary>What is taken from outside at most, and where work files may lie. Each limit is refused in words when it is passed.</summary>
/// <param name="ScratchFolder">Folder for temporary files; made when missing. Each job works in an own folder within and removes it.</param>
public sealed record IntakeLimits(string ScratchFolder)
{
    /// <summary>Longest file, bytes.</summary>
    public long Bytes { get; init; } = 2L << 30;

    /// <summary>Most pages or images in one file.</summary>
    public int Pages { get; init; } = 40;

    /// <summary>Most pixels in one image, read from its header before any is decoded.</summary>
    public long Pixels { get; init; } = 180_000_000;

    /// <summary>Longest side of a page at its effective size, mm.</summary>
    public double SideMm { get; init; } = 400_000;

    /// <summary>Longest time for one child process or for reading one PDF, seconds.</summary>
    public double ChildSeconds { get; init; } = 180;

    /// <summary>Most memory that one child process may ask for, bytes of address space.</summary>
    public long ChildBytes { get; init; } = 4L << 30;

    /// <summary>Most drawing operations followed on one PDF page, forms included.</summary>
    public long Operations { get; init; } = 5_000_000;

    /// <summary>Most pixels rendered for one page, all plates of it counted once.</summary>
    public long RenderPixels { get; init; } = 4_000_000_000;

    /// <summary>
    /// Most pixels that one run of Ghostscript renders; a larger page is rendered in strips of rows, one run after the other. Its separation device holds
    /// no file over 4 GiB, and writes four bytes a pixel into one of them.
    /// </summary>
    public long StripPixels { get; init; } = 1_000_000_000;

    /// <summary>The Ghostscript program: a name looked up on the path, or a full path.</summary>
    public string Ghostscript { get; init; } = "gs";

    /// <summary>
    /// The program that measures PDFs and drawings in a process of its own, and its arguments: it talks as <see cref="MeasuringHost"/> does. Empty = measured
    /// in this process, where a parser that does not end can be given up but not ended.
    /// </summary>
    public IReadOnlyList<string> Measurer { get; init; } = [];

    /// <summary>Most memory of the measuring process for its objects, bytes.</summary>
    public long MeasurerBytes { get; init; } = 1L << 30;
}
