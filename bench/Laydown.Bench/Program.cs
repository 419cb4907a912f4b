using Laydown.Bench;

if (BenchArguments.Parse(args) is not { } arguments)
{
    Console.Error.WriteLine("bench: wanted NAME [--instances DIR] [--seconds S] [--out FILE] [--json]; NAME is spine.");
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
    SpineResult result = await Spine.RunAsync(arguments, stop.Token);
    await ResultFile.KeepAsync(result, arguments, Console.Out, stop.Token);
    return 0;
}
catch (OperationCanceledException)
{
    Console.Error.WriteLine("Cancelled.");
    return 130;
}
