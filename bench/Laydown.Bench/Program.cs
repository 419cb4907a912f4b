using Laydown.Bench;

if (args is [RasterBoard.Verb, _, _, _])
{
    RasterBoard.Run(args);
    return 0;
}

if (args is ["raster-stages"])
{
    foreach (RasterRow row in Laydown.Bench.Raster.Stages(CancellationToken.None))
        Console.WriteLine(row);
    return 0;
}

if (BenchArguments.Parse(args) is not { } arguments)
{
    Console.Error.WriteLine("bench: wanted NAME [--instances DIR] [--seconds S] [--out FILE] [--json], for layout also [--family NAME], for layout and week [--sample K] [--cpu], for these and planner [--keep]; NAME is spine, colour, daynight, raster, layout, week, planner or log.");
    return 2;
}

using CancellationTokenSource stop = new();
Console.CancelKeyPress += (_, pressed) =>
{
    pressed.Cancel = true;
    stop.Cancel();
};

try
{
    if (arguments.Name == "colour")
        await ResultFile.KeepAsync(Laydown.Bench.Colour.Run(arguments, stop.Token), arguments, Console.Out, stop.Token);
    else if (arguments.Name == "daynight")
        await ResultFile.KeepAsync(await DayNight.RunAsync(arguments, stop.Token), arguments, Console.Out, stop.Token);
    else if (arguments.Name == "raster")
        await ResultFile.KeepAsync(await Laydown.Bench.Raster.RunAsync(arguments, stop.Token), arguments, Console.Out, stop.Token);
    else if (arguments.Name == "layout")
        await ResultFile.KeepAsync(Laydown.Bench.Layout.LayoutBench.Run(arguments, Console.Error, stop.Token), arguments, Console.Out, stop.Token);
    else if (arguments.Name == "log")
        await ResultFile.KeepAsync(await Laydown.Bench.Log.LogBench.RunAsync(arguments, stop.Token), arguments, Console.Out, stop.Token);
    else if (arguments.Name == "week")
        await ResultFile.KeepAsync(Laydown.Bench.Week.WeekBench.Run(arguments, Console.Error, stop.Token), arguments, Console.Out, stop.Token);
    else if (arguments.Name == "planner")
        await ResultFile.KeepAsync(Laydown.Bench.Week.PlannerBench.Run(arguments, Console.Error, stop.Token), arguments, Console.Out, stop.Token);
    else
        await ResultFile.KeepAsync(await Spine.RunAsync(arguments, stop.Token), arguments, Console.Out, stop.Token);
    return 0;
}
catch (InvalidDataException fault)
{
    Console.Error.WriteLine(fault.Message);
    return 3;
}
catch (OperationCanceledException)
{
    Console.Error.WriteLine("Cancelled.");
    return 130;
}
