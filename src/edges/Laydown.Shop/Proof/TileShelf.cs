namespace Laydown.Shop.Proof;

/// <summary>Keeps the latest tiles in memory, up to so many bytes; the one not asked for the longest goes first.</summary>
/// <param name="mostBytes">Bytes of all tiles together.</param>
public sealed class TileShelf(long mostBytes)
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, LinkedListNode<(string Key, byte[] Tile)>> places = new(StringComparer.Ordinal);
    private readonly LinkedList<(string Key, byte[] Tile)> latest = new();
    private long bytes;

    /// <summary>Bytes kept now.</summary>
    public long Bytes
    {
        get
        {
            lock (gate)
                return bytes;
        }
    }

    /// <summary>The tile, or null.</summary>
    public byte[]? Find(string key)
    {
        lock (gate)
        {
            if (!places.TryGetValue(key, out var place))
                return null;
            latest.Remove(place);
            latest.AddFirst(place);
            return place.Value.Tile;
        }
    }

    /// <summary>Keeps a tile.</summary>
    public void Keep(string key, byte[] tile)
    {
        lock (gate)
        {
            if (places.ContainsKey(key) || tile.Length > mostBytes)
                return;
            places[key] = latest.AddFirst((key, tile));
            bytes += tile.Length;
            while (bytes > mostBytes)
            {
                (string oldest, byte[] gone) = latest.Last!.Value;
                latest.RemoveLast();
                places.Remove(oldest);
                bytes -= gone.Length;
            }
        }
    }
}
