using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop.Run;

namespace Laydown.Shop.Colour;

/// <summary>Puts a colour into the shop's library, or another in the place of that of the same id.</summary>
/// <param name="folder">The shop's folder.</param>
/// <param name="files">Reads and writes.</param>
public sealed class AddNamedColour(ShopFolder folder, IColourFiles files)
{
    /// <summary>Adds; a refused colour changes nothing.</summary>
    /// <param name="colour">The colour.</param>
    /// <param name="cancellation">Stops before saving.</param>
    public async Task<Reading<ColourLibrary>> AddAsync(LibraryColour colour, CancellationToken cancellation)
    {
        List<InputFault> faults = [.. Faults(colour)];
        Reading<ColourLibrary> library = files.Library(folder.NamedColours);
        faults.AddRange(library.Faults);
        if (faults.Count > 0)
            return Reading.Refused<ColourLibrary>(faults);

        ColourLibrary changed = new([.. library.Value.Colours.Where(c => c.Id != colour.Id), colour]);
        await WholeFile.WriteAsync(folder.NamedColours, files.LibraryText(changed), cancellation);
        return Reading.Of(changed);
    }

    private static IEnumerable<InputFault> Faults(LibraryColour colour)
    {
        const string file = "named colour";
        bool plain = colour.Id.Length is > 0 and <= 60 && colour.Id.All(c => char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || c == '-')
            && !colour.Id.StartsWith('-') && !colour.Id.EndsWith('-') && !colour.Id.Contains("--", StringComparison.Ordinal);
        if (!plain)
            yield return new(file, null, "/id", Invariant($"'{colour.Id}'"), "a short name of lower-case letters, digits and hyphens");
        if (colour.Name.Trim().Length is 0 or > 200)
            yield return new(file, null, "/name", Invariant($"{colour.Name.Length} characters"), "1 to 200 characters");
        if (colour.Source.Trim().Length is 0 or > 400)
            yield return new(file, null, "/source", Invariant($"{colour.Source.Length} characters"), "1 to 400 characters: where the colour comes from");
        if (!(colour.Colour.L is >= 0 and <= 100))
            yield return new(file, null, "/colour/l", Invariant($"{colour.Colour.L}"), "L* 0 to 100");
        if (!(colour.Colour.A is >= -128 and <= 128))
            yield return new(file, null, "/colour/a", Invariant($"{colour.Colour.A}"), "a* −128 to 128");
        if (!(colour.Colour.B is >= -128 and <= 128))
            yield return new(file, null, "/colour/b", Invariant($"{colour.Colour.B}"), "b* −128 to 128");
    }
}
