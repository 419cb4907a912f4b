namespace Laydown.Colour.Readings;

/// <summary>Words for what stood behind a patch, in files and for people.</summary>
public static class BehindWords
{
    /// <summary>What a text of a file says: black, white, or a lamp where it speaks of transmission; unsaid where it names none or both.</summary>
    public static Behind Read(string text)
    {
        bool Has(string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);
        bool lamp = Has("transmi") || Has("through") || Has("lamp"), black = Has("black"), white = Has("white");
        return lamp ? Behind.Lamp : black == white ? Behind.Unsaid : black ? Behind.Black : Behind.White;
    }

    /// <summary>The word written into files; empty for unsaid.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No known value.</exception>
    public static string Word(Behind behind) => behind switch
    {
        Behind.Unsaid => "",
        Behind.Black => "black",
        Behind.White => "white",
        Behind.Lamp => "lamp",
        _ => throw new ArgumentOutOfRangeException(nameof(behind), behind, "Behind: wanted a known value."),
    };

    /// <summary>For people: <c>over black</c>, <c>over white</c>, <c>through</c>.</summary>
    public static string Way(Behind behind) => behind switch
    {
        Behind.Black => "over black",
        Behind.White => "over white",
        Behind.Lamp => "through",
        _ => "backing unsaid",
    };
}
