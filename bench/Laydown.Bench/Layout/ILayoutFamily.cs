namespace Laydown.Bench.Layout;

/// <summary>A family of published instances: its file form, its solver, its judge.</summary>
internal interface ILayoutFamily
{
    /// <summary>Name, as in the option of the command line.</summary>
    string Name { get; }

    /// <summary>Whether a folder holds instances of it, by the form of its files, and by the folder's name where forms are alike.</summary>
    bool Takes(string folder);

    /// <summary>Every instance in every variant.</summary>
    IReadOnlyList<LayoutTask> Read(string folder, LayoutValues values);
}
