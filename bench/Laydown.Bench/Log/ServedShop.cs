using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Laydown.Bench.Log;

/// <summary>The built program serving a shop, in a process of its own, as its users start it.</summary>
internal sealed class ServedShop : IDisposable
{
    private readonly Process process;

    private ServedShop(Process process, HttpClient client, double startMs) => (this.process, Client, StartMs) = (process, client, startMs);

    /// <summary>Asks the shop; it has made no request yet.</summary>
    public HttpClient Client { get; }

    /// <summary>From the start of the process until it takes a connection, ms.</summary>
    public double StartMs { get; }

    /// <summary>Processor time of the process so far.</summary>
    public TimeSpan Processor
    {
        get
        {
            process.Refresh();
            return process.TotalProcessorTime;
        }
    }

    /// <summary>Starts the program and waits until it takes connections.</summary>
    /// <exception cref="InvalidDataException">The environment names no program, or it ended.</exception>
    public static async Task<ServedShop> StartAsync(string folder, CancellationToken cancellation)
    {
        string program = Environment.GetEnvironmentVariable("LAYDOWN_PROGRAM") ?? throw new InvalidDataException("LAYDOWN_PROGRAM: found nothing; wanted the built program, as ./bench/run names it.");
        int port = FreePort();
        ProcessStartInfo start = new(program, ["serve", "--shop", folder, "--url", Invariant($"http://127.0.0.1:{port}")]) { RedirectStandardOutput = true };
        // The bench compiles everything fully; the program must run as it does for its users.
        start.Environment.Remove("DOTNET_TieredCompilation");
        var watch = Stopwatch.StartNew();
        Process process = Process.Start(start) ?? throw new InvalidDataException(Invariant($"{program}: did not start."));
        while (!await ListensAsync(port, cancellation))
        {
            if (process.HasExited)
                throw new InvalidDataException(Invariant($"{program}: ended with {process.ExitCode} before it served."));
            await Task.Delay(2, cancellation);
        }

        return new(process, new HttpClient { BaseAddress = new Uri(Invariant($"http://127.0.0.1:{port}")) }, watch.Elapsed.TotalMilliseconds);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Client.Dispose();
        process.Kill();
        process.WaitForExit();
        process.Dispose();
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static async Task<bool> ListensAsync(int port, CancellationToken cancellation)
    {
        using TcpClient client = new();
        try
        {
            await client.ConnectAsync(IPAddress.Loopback, port, cancellation);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
