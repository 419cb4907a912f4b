using Microsoft.Playwright;

namespace Laydown.Web.Tests.Browser;

/// <summary>The machine's own Chromium; a test that finds none fails.</summary>
internal static class ChromiumOnPath
{
    public static Task<IBrowser> LaunchAsync(IPlaywright playwright) => playwright.Chromium.LaunchAsync(new()
    {
        ExecutablePath = Find(),
        Args =
        [
            "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--use-angle=swiftshader", "--enable-unsafe-swiftshader",
        ],
    });

    private static string Find() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':')
        .Select(folder => Path.Combine(folder, "chromium")).FirstOrDefault(File.Exists)
        ?? throw new InvalidOperationException("Found no chromium on the PATH; wanted the Debian package chromium.");
}
