using System.Diagnostics;

namespace Laydown.Edges.Tests.Icc;

/// <summary>Runs an independent program; one that is missing or fails makes the test fail.</summary>
internal static class OutsideProgram
{
    public static string Run(string program, string input, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        Task<string> said = process.StandardError.ReadToEndAsync();
        string answer = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"{program} ended with an error: {said.Result}");
        return answer;
    }
}
