namespace Laydown.Shop;

/// <summary>Where things lie below a shop's folder. All paths are made here, none is taken from a file.</summary>
/// <param name="Root">Full path of the shop's folder.</param>
public sealed record ShopFolder(string Root)
{
    /// <summary>Presses, inks, stocks, conditions, profiles.</summary>
    public string Catalogue => Path.Combine(Root, "catalogue");

    /// <summary>One folder for each order.</summary>
    public string Orders => Path.Combine(Root, "orders");

    /// <summary>The data base.</summary>
    public string StoreFile => Path.Combine(Root, "store", "shop.db");

    /// <summary>Pictures of artwork pages.</summary>
    public string Previews => Path.Combine(Root, "previews");

    /// <summary>Press files in means, for looking at them from afar.</summary>
    public string Pyramids => Path.Combine(Previews, "press");

    /// <summary>One folder for each run that was made.</summary>
    public string Runs => Path.Combine(Root, "runs");

    /// <summary>Quotes as PDF.</summary>
    public string Quotes => Path.Combine(Root, "quotes");

    /// <summary>Readings, models and residuals of print conditions.</summary>
    public string Characterisations => Path.Combine(Catalogue, "characterisations");

    /// <summary>Optics of ink sets and the readings behind them.</summary>
    public string Optics => Path.Combine(Catalogue, "optics");

    /// <summary>ICC profiles and device links.</summary>
    public string Profiles => Path.Combine(Catalogue, "profiles");

    /// <summary>Readings of charts as they came in.</summary>
    public string Readings => Path.Combine(Catalogue, "readings");

    /// <summary>One folder for each chart that was made.</summary>
    public string Charts => Path.Combine(Root, "charts");

    /// <summary>One folder for each item, in it one for each of its looks.</summary>
    public string Looks => Path.Combine(Root, "looks");

    /// <summary>The library of named colours.</summary>
    public string NamedColours => Path.Combine(Catalogue, "named-colours.json");

    /// <summary>Picture of a page; the same artwork has the same picture whatever order it belongs to.</summary>
    /// <param name="artworkSha256">SHA-256 of the artwork, lower-case hex.</param>
    /// <param name="page">Page from 1.</param>
    public string Preview(string artworkSha256, int page) => Path.Combine(Previews, Invariant($"{artworkSha256}-p{page}.png"));
}
