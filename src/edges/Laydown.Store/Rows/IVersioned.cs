namespace Laydown.Store.Rows;

/// <summary>A row that tells whether someone else wrote it since it was read.</summary>
internal interface IVersioned
{
    /// <summary>Counted up by each write; the write fails when it is not the one that was read.</summary>
    long Version { get; set; }
}
