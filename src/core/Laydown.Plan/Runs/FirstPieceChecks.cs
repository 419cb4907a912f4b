using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>What the operator looks at before the first piece is let go.</summary>
public static class FirstPieceChecks
{
    /// <summary>The checks that this run needs, in the order they are made; common practice, no source.</summary>
    public static IReadOnlyList<string> Of(RunRequest request, Mode mode)
    {
        List<string> checks = ["Nozzle pattern of every channel: count the gaps, and stop where they cluster."];
        if (mode.TwoWay)
            checks.Add("The gap has changed: print the two-way line test and align before the first sheet.");
        LayerChecks(request.Stack, checks);
        checks.Add("Picture reads the right way round and stands upright as the viewer sees it; top edge as ordered.");
        checks.Add("Measure the first piece against its ordered size, both ways.");
        if (request.Items.Any(i => i.SmallestModuleMm is not null))
            checks.Add("Scan every bar code on the first piece, quiet zone included.");
        if (request.Stock.Grain != GrainDirection.None)
            checks.Add(Invariant($"Flutes or grain run along the {(request.Stock.Grain == GrainDirection.AlongLength ? "length" : "width")} of the sheet as drawn."));
        checks.Add("Cure: rub with a dry cloth, no tack, no smell of wet ink; tape test on a new lot of stock.");
        checks.Add("Colour against the proof, and bands against the light.");
        return checks;
    }

    private static void LayerChecks(LayerStack stack, List<string> checks)
    {
        bool white = stack.Layers.Any(l => l.Group == InkGroup.White);
        if (stack.SeenFrom == SeenFrom.BothSides)
            checks.Add("Seen from both sides: walk round the piece, each picture reads the right way round for its viewer.");
        else if (stack.Layers.Any(l => l.Mirrored))
            checks.Add("Second surface: look through the sheet from the unprinted side, where the viewer stands.");
        if (white)
            checks.Add("White lies where the layer drawing has it, none shows past the colour, and it is even.");
        if (stack.Layers.Any(l => l.Group == InkGroup.BlockOut))
            checks.Add("Hold the block-out against a lamp: no light comes through it, no black shows past the white.");
        if (stack.Layers.Any(l => l.Negative))
            checks.Add("Windows of the mask lie where the layer drawing has them.");
        if (stack.Lit)
            checks.Add("Hold the first piece in front of the lamp of the job: no points of light, no bands, lit picture as proofed.");
        if (stack.Layers.Select(l => l.Face).Distinct().Count() > 1)
            checks.Add("Second face: same two lay edges as the first; measure the register at opposite corners.");
    }
}
