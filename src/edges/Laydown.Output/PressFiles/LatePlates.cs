using Laydown.Measures;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;

namespace Laydown.Output.PressFiles;

/// <summary>Plates of a page whose size and names are known before it is rendered: rendering begins when it is asked for or first read.</summary>
/// <remarks>
/// Recipes are written for the names that the artwork is known to have; here they are brought to the plates that came. A name that did not
/// come is bare, unless a layer is made of it alone.
/// </remarks>
internal sealed class LatePlates : ITileSource, IAsyncDisposable
{
    private readonly IPlateStream stream;
    private readonly RenderRequest request;
    private readonly IReadOnlySet<string> needed;
    private readonly CancellationToken cancellation;
    private readonly Lock gate = new();
    private Task<Opened>? opening;

    /// <summary>Plates to come.</summary>
    /// <param name="stream">Renders.</param>
    /// <param name="request">What.</param>
    /// <param name="names">Plates the recipes are written for.</param>
    /// <param name="needed">Names that must come.</param>
    /// <param name="cancellation">Ends the rendering.</param>
    public LatePlates(
        IPlateStream stream, RenderRequest request, IReadOnlyList<string> names, IReadOnlySet<string> needed, CancellationToken cancellation)
    {
        this.stream = stream;
        this.request = request;
        this.needed = needed;
        this.cancellation = cancellation;
        Names = names;
        Rows = SheetPixels.Of(request.Printed.HeightMm, request.Ppi);
        Columns = SheetPixels.Of(request.Printed.WidthMm, request.Ppi);
    }

    /// <summary>Plates the recipes are written for.</summary>
    public IReadOnlyList<string> Names { get; }

    public int Inks => Names.Count;

    public int Rows { get; }

    public int Columns { get; }

    /// <summary>Most bytes of scratch that rendering takes: four plates of 16 bits, one more for each further name.</summary>
    public long ScratchBytes => 2L * Rows * Columns * Names.Count;

    /// <summary>Whether rendering was begun.</summary>
    public bool HasBegun => opening is not null;

    /// <summary>Begins to render, once; done when size and names are known.</summary>
    public Task BeginAsync() => OpenAsync();

    /// <summary>Waits until the page is rendered to its end.</summary>
    /// <returns>What went wrong: reads of these plates are final only where nothing did.</returns>
    public async Task<IReadOnlyList<InputFault>> EndedAsync()
    {
        Opened opened = await OpenAsync();
        return opened.Plates is { } plates ? await plates.Ended : opened.Faults;
    }

    /// <summary>The plates as they came, or null where there are none.</summary>
    public async Task<OpenPlates?> CameAsync() => (await OpenAsync()).Plates;

    /// <exception cref="InvalidDataException">The page cannot be rendered; the message holds the first fault.</exception>
    public void ReadRow(int ink, int row, int firstColumn, Span<ushort> into)
    {
        Opened opened = OpenAsync().GetAwaiter().GetResult();
        if (opened.Plates is null)
            throw new InvalidDataException(opened.Faults[0].ToString());
        if (opened.Places[ink] is { } plate)
            opened.Plates.Source.ReadRow(plate, row, firstColumn, into);
        else
            into.Clear();
    }

    public async ValueTask DisposeAsync()
    {
        if (opening is null)
            return;
        await ((Task)opening).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        if (opening.IsCompletedSuccessfully && opening.Result.Plates is { } plates)
            await plates.DisposeAsync();
    }

    private Task<Opened> OpenAsync()
    {
        lock (gate)
            return opening ??= Task.Run(RenderAsync, CancellationToken.None);
    }

    private async Task<Opened> RenderAsync()
    {
        Reading<OpenPlates> reading = await stream.OpenAsync(request, cancellation);
        if (!reading.IsTaken)
            return new(null, [], reading.Faults);
        OpenPlates plates = reading.Value;
        int?[] places = [.. Names.Select(name => PlaceOf(plates, name))];
        InputFault? fault = null;
        for (int name = 0; name < places.Length; name++)
        {
            if (places[name] is null && needed.Contains(Names[name]))
                fault ??= Fault("separations", string.Join(", ", plates.Names.Skip(4)) is { Length: > 0 } found ? found : "none", Invariant($"\"{Names[name]}\""));
        }

        if (plates.Rows != Rows || plates.Columns != Columns)
            fault ??= Fault("plates", Invariant($"{plates.Columns} × {plates.Rows} pixels"), Invariant($"{Columns} × {Rows}"));
        if (fault is null)
            return new(plates, places, []);
        await plates.DisposeAsync();
        return new(null, [], [fault]);
    }

    private static int? PlaceOf(OpenPlates plates, string name)
    {
        for (int plate = 0; plate < plates.Names.Count; plate++)
        {
            if (string.Equals(plates.Names[plate], name, StringComparison.OrdinalIgnoreCase))
                return plate;
        }

        return null;
    }

    private InputFault Fault(string field, string found, string wanted) => new(Path.GetFileName(request.ArtworkPath), request.Page, field, found, wanted);

    private sealed record Opened(OpenPlates? Plates, IReadOnlyList<int?> Places, IReadOnlyList<InputFault> Faults);
}
