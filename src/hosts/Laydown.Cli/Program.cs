using Laydown.Cli;

return await CommandLine.RunAsync(args, Console.Out, Console.Error, CancellationToken.None);
