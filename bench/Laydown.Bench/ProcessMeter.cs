using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace Laydown.Bench;

/// <summary>Reads what Linux knows of this process and of its children that have ended.</summary>
internal static partial class ProcessMeter
{
    private const int OfChildren = -1;

    /// <summary>Processor time of this process and of all children that have ended, s.</summary>
    public static double CpuSeconds()
    {
        using Process self = Process.GetCurrentProcess();
        Usage children = Read();
        return self.TotalProcessorTime.TotalSeconds + children.UserSeconds + (children.UserMicroseconds / 1e6)
            + children.SystemSeconds + (children.SystemMicroseconds / 1e6);
    }

    /// <summary>Processor time of this thread, s, to the nanosecond.</summary>
    public static double ThreadSeconds() => Clock(3);

    /// <summary>Processor time of all threads of this process, s, to the nanosecond: for libraries with threads of their own.</summary>
    public static double ProcessSeconds() => Clock(2);

    /// <summary>Most memory this process held since the last reset, MiB.</summary>
    public static double PeakMb()
    {
        string line = File.ReadLines("/proc/self/status").First(l => l.StartsWith("VmHWM:", StringComparison.Ordinal));
        return double.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[^2], CultureInfo.InvariantCulture) / 1024;
    }

    /// <summary>Starts counting the peak anew.</summary>
    public static void ResetPeak() => File.WriteAllText("/proc/self/clear_refs", "5");

    private static double Clock(int clock) => GetTime(clock, out TimeSpec time) == 0
        ? time.Seconds + (time.Nanoseconds / 1e9)
        : throw new InvalidOperationException("clock_gettime failed; wanted Linux.");

    private static Usage Read() => GetUsage(OfChildren, out Usage usage) == 0
        ? usage
        : throw new InvalidOperationException("getrusage failed; wanted Linux.");

    [LibraryImport("libc", EntryPoint = "clock_gettime")]
    private static partial int GetTime(int clock, out TimeSpec time);

    [StructLayout(LayoutKind.Sequential)]
    private readonly struct TimeSpec
    {
        public readonly long Seconds;
        public readonly long Nanoseconds;
    }

    [LibraryImport("libc", EntryPoint = "getrusage")]
    private static partial int GetUsage(int who, out Usage usage);

    // struct rusage of Linux on 64 bits: two times, then fourteen counts that are not read. The peak among them is no use: a child
    // that is just started counts the memory of its parent as its own.
    [StructLayout(LayoutKind.Sequential)]
    private struct Usage
    {
        public long UserSeconds;
        public long UserMicroseconds;
        public long SystemSeconds;
        public long SystemMicroseconds;
        public Rest Unread;
    }

    [System.Runtime.CompilerServices.InlineArray(14)]
    private struct Rest
    {
        private long first;
    }
}
