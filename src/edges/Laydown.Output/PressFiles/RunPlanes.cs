using Laydown.Layout.Sheets;
using Laydown.Measures;
using Laydown.Output.Layers;
using Laydown.Press.Stacks;
using Laydown.Raster.Tiles;
using Laydown.Shop.Artwork;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Laydown of every layer of every item of a run, as scratch files, ready to be put on sheets.</summary>
internal sealed class RunPlanes : IDisposable
{
    private readonly Dictionary<(string Item, int Layer, bool Turned, bool BackUp), PlaneFile> files = [];
    private readonly Dictionary<int, IReadOnlyList<InkPlane>> inks = [];
    private readonly RunContext context;
    private readonly string workPath;

    private RunPlanes(RunContext context, string workPath)
    {
        this.context = context;
        this.workPath = workPath;
    }

    /// <summary>The face printed first; the sheets' drawings are seen from there.</summary>
    public SheetFace FirstFace => context.Run.Stack.Layers[0].Face;

    /// <summary>Makes them all.</summary>
    /// <param name="context">The run.</param>
    /// <param name="renderer">Renders pages.</param>
    /// <param name="ppi">Resolution, ppi.</param>
    /// <param name="workPath">Folder for the scratch files.</param>
    /// <param name="tell">Told what is done and the share, 0 to 1.</param>
    /// <param name="cancellation">Looked at before each band.</param>
    public static async Task<Reading<RunPlanes>> MakeAsync(
        RunContext context, IPageRenderer renderer, double ppi, string workPath, Action<string, double> tell, CancellationToken cancellation)
    {
        RunPlanes planes = new(context, workPath);
        bool whole = false;
        try
        {
            for (int i = 0; i < context.Items.Count; i++)
            {
                int at = i;
                ItemRecord item = context.Items[i];
                void Done(double share) => tell("laydown of " + item.Item.Title, (at + share) / context.Items.Count);
                Reading<int> made = await planes.AddAsync(item, i, renderer, ppi, Done, cancellation);
                if (!made.IsTaken)
                    return Reading.Refused<RunPlanes>(made.Faults);
            }

            whole = true;
            return Reading.Of(planes);
        }
        finally
        {
            if (!whole)
                planes.Dispose();
        }
    }

    /// <summary>Layers of the stack.</summary>
    public int LayerCount => context.Run.Stack.Layers.Count;

    /// <summary>The planes of a layer in the order of samples.</summary>
    public IReadOnlyList<InkPlane> InksOf(int layer) => inks[layer];

    /// <summary>Whether a layer is printed after the sheet was turned over.</summary>
    public bool IsTurnedOver(int layer) => context.Run.Stack.Layers[layer].Face != FirstFace;

    /// <summary>How a sheet was turned over before a layer is printed on it; null where it was not.</summary>
    /// <param name="sheet">Sheet from 0.</param>
    /// <param name="layer">Layer from 0.</param>
    public SheetTurn? TurnOf(int sheet, int layer) => IsTurnedOver(layer) ? context.Run.Sheets[sheet].Faces?.Turn ?? SheetTurn.Sideways : null;

    /// <summary>The layer of the first face whose file serves this one too; null where it has a file of its own.</summary>
    /// <param name="sheet">Sheet from 0.</param>
    /// <param name="layer">Layer from 0.</param>
    public int? SameFileAs(int sheet, int layer) =>
        IsTurnedOver(layer) && context.Run.Sheets[sheet].Faces is { OneFile: true } ? BackUpLayers.Of(context.Run.Stack, layer) : null;

    /// <summary>The planes that a piece shows in a layer.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="layer">Layer from 0.</param>
    public (PlaneFile Planes, bool Mirrored) Of(PlacedPixels piece, int layer)
    {
        if (!files.TryGetValue((piece.ItemId, layer, piece.Turned, piece.BackUp), out PlaneFile? file))
            throw new ArgumentException(Invariant($"Piece of item {piece.ItemId}: wanted an item of run {context.Run.Id}."), nameof(piece));
        LayerStack stack = StackOf(ItemOf(piece.ItemId));
        return (file, MirroredOnSheet(stack.Layers[piece.BackUp ? BackUpLayers.Of(stack, layer) : layer], layer));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (PlaneFile file in files.Values)
            file.Dispose();
        files.Clear();
    }

    private async Task<Reading<int>> AddAsync(
        ItemRecord item, int number, IPageRenderer renderer, double ppi, Action<double> done, CancellationToken cancellation)
    {
        LayerStack stack = StackOf(item);
        ITileSink SinkOf(int layer, IReadOnlyList<InkPlane> planes, double limitPercent, int rows, int columns)
        {
            string path = Path.Combine(workPath, Invariant($"{number}-{layer}.raw"));
            PlaneFile file = new(path, planes.Count, rows, columns, limitPercent, MirroredOnSheet(stack.Layers[layer], layer), ContourClip.Of(context, item, rows, columns));
            files[(item.Item.Id, layer, false, false)] = file;
            if (!inks.TryGetValue(layer, out IReadOnlyList<InkPlane>? first) || planes.Count > first.Count)
                inks[layer] = planes;
            if (!IsPlaced(item.Item.Id, p => p.BackUp))
                return file;

            // Pieces with their backs up show the same picture on the other face.
            int other = BackUpLayers.Of(stack, layer);
            PlaneFile back = new(
                Path.Combine(workPath, Invariant($"{number}-{layer}-back.raw")), planes.Count, rows, columns, limitPercent,
                MirroredOnSheet(stack.Layers[layer], other), ContourClip.Of(context, item, rows, columns));
            files[(item.Item.Id, other, false, true)] = back;
            return new BothPlanes(file, back);
        }

        Reading<int> made;
        if (context.Looks.GetValueOrDefault(item.Item.Id) is { } look)
        {
            (int rows, int columns) = (SheetPixels.Of(item.Item.Printed.HeightMm, ppi), SheetPixels.Of(item.Item.Printed.WidthMm, ppi));
            made = ChosenLooks.Run(
                look, context.Condition.Id, rows, columns, context.Optics, (layer, planes, limit) => SinkOf(layer, planes, limit, rows, columns), done, cancellation);
        }
        else if (item.LookId is { } missing)
        {
            return Refused(item, "look", Invariant($"{missing}, which is not at hand"), "the look the item is printed from");
        }
        else
        {
            ItemLayers maker = new(renderer, context.Condition, context.InkSet, context.ProfilePath);
            made = await maker.RunAsync(
                item, stack, ppi, (layer, recipe, rows, columns) => SinkOf(layer, recipe.Planes, recipe.LimitPercent, rows, columns), done, cancellation);
        }

        if (made.IsTaken && IsPlaced(item.Item.Id, p => p.Turned))
            Turn(item.Item.Id, number, stack.Layers.Count, cancellation);
        return made.Then(_ => Agreeing(item, stack));
    }

    private void Turn(string itemId, int number, int layers, CancellationToken cancellation)
    {
        for (int layer = 0; layer < layers; layer++)
        {
            string path = Path.Combine(workPath, Invariant($"{number}-{layer}-turned.raw"));
            files[(itemId, layer, true, false)] = files[(itemId, layer, false, false)].Turned(path, cancellation);
            if (files.TryGetValue((itemId, layer, false, true), out PlaneFile? back))
                files[(itemId, layer, true, true)] = back.Turned(Path.Combine(workPath, Invariant($"{number}-{layer}-back-turned.raw")), cancellation);
        }
    }

    private Reading<int> Agreeing(ItemRecord item, LayerStack stack)
    {
        for (int layer = 0; layer < stack.Layers.Count; layer++)
        {
            if (InkAgreement.Fault(context, item, layer, files[(item.Item.Id, layer, false, false)].Inks, inks[layer]) is { } fault)
                return Reading.Refused<int>(fault);
        }

        return Reading.Of(stack.Layers.Count);
    }

    private static Reading<int> Refused(ItemRecord item, string field, string found, string wanted) =>
        Reading.Refused<int>(new InputFault(item.Item.Artwork, null, field, found, wanted));

    // A sheet turned over is composed like the first face and then seen from behind: its pieces are mirrored once more.
    private bool MirroredOnSheet(Layer layer, int number) => layer.Mirrored ^ IsTurnedOver(number);

    private bool IsPlaced(string itemId, Func<Placement, bool> so) =>
        context.Run.Sheets.Any(s => s.Placements.Any(p => so(p) && SheetPixels.ItemOf(p.PieceId) == itemId));

    private ItemRecord ItemOf(string itemId) => context.Items.First(i => i.Item.Id == itemId);

    private LayerStack StackOf(ItemRecord item) => InkAgreement.StackOf(context, item);
}
