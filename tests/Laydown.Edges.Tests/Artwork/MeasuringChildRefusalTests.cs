using System.Diagnostics;
using System.IO.Compression;
using System.Text;
using Laydown.Formats.Json;
using Laydown.Intake.Artwork;
using Laydown.Measures;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>Measuring in a process of its own: the same result, and a refusal where that process does not answer, asks for too much or is gone.</summary>
public sealed class MeasuringChildRefusalTests : IDisposable
{
    private readonly WorkFolder work = new();

    private static IReadOnlyList<string> Measurer { get; } = [Path.Combine(AppContext.BaseDirectory, "laydown"), "measure-files"];

    [Fact]
    public async Task The_child_measures_file_after_file_as_this_process_does()
    {
        string white = "/ColorSpace<</W " + HandPdf.Separation("White", "0.2 0 0 0") + ">>/Font<</F<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>>>";
        string pdf = work.Write("page.pdf", HandPdf.Page("/MediaBox[0 0 200 100]/TrimBox[10 10 190 90]", white, "/W cs 1 scn 9 9 50 50 re f 0.1 w 20 20 m 90 30 l S BT /F 7.3 Tf 20 40 Td (Tern) Tj ET"));
        string svg = work.File("page.svg");
        await File.WriteAllTextAsync(svg, "<svg xmlns='http://www.w3.org/2000/svg' width='50mm' height='33.3mm' viewBox='0 0 50 50'><rect width='5' height='5' fill='red'/></svg>");
        string bad = work.Write("bad.pdf", Encoding.Latin1.GetBytes("%PDF-1.6\nnothing here\nstartxref\n9\n%%EOF\n"));

        using var apart = new ArtworkReader(work.Limits with { Measurer = Measurer });
        foreach (string path in new[] { pdf, svg, bad, pdf })
        {
            var here = await work.Reader.ReadAsync(path, CancellationToken.None);
            var there = await apart.ReadAsync(path, CancellationToken.None);
            Assert.Equal(here.Faults, there.Faults);
            if (here.IsTaken)
                Assert.Equal(LaydownJson.ToBytes(here.Value), LaydownJson.ToBytes(there.Value));
        }
    }

    [Fact]
    public async Task A_child_that_never_answers_is_ended_with_a_refusal()
    {
        string pid = work.File("pid");
        var limits = work.Limits with { ChildSeconds = 0.5, Measurer = ["/bin/sh", "-c", "echo $$ > " + pid + "; exec sleep 1000"] };
        using var reader = new ArtworkReader(limits);
        var read = await reader.ReadAsync(work.Write("page.pdf", HandPdf.Pages(1)), CancellationToken.None);
        Assert.Equal("time to read", Assert.Single(read.Faults).Field);
        Assert.False(Directory.Exists("/proc/" + (await File.ReadAllTextAsync(pid)).Trim()));
    }

    [Theory, InlineData("exit 3", "exit code 3"), InlineData("echo what; sleep 1000", "talks on"), InlineData("read x; printf '5\\nhello'; sleep 1000", "talks on")]
    public async Task A_child_that_ends_or_talks_nonsense_is_a_refusal_and_the_next_file_is_measured_anew(string script, string found)
    {
        string pdf = work.Write("page.pdf", HandPdf.Pages(1));
        using var reader = new ArtworkReader(work.Limits with { Measurer = ["/bin/sh", "-c", script] });
        for (int time = 0; time < 2; time++)
        {
            var fault = Assert.Single((await reader.ReadAsync(pdf, CancellationToken.None)).Faults);
            Assert.Contains(found, fault.Found, StringComparison.Ordinal);
            Assert.Equal("page.pdf", fault.File);
        }
    }

    [Fact]
    public async Task Cancelling_ends_the_child()
    {
        string pid = work.File("pid");
        using var reader = new ArtworkReader(work.Limits with { Measurer = ["/bin/sh", "-c", "echo $$ > " + pid + "; exec sleep 1000"] });
        using var stop = new CancellationTokenSource();
        var reading = reader.ReadAsync(work.Write("page.pdf", HandPdf.Pages(1)), stop.Token);
        while (!File.Exists(pid) || new FileInfo(pid).Length == 0)
            await Task.Delay(10);
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => reading);
        Assert.False(Directory.Exists("/proc/" + (await File.ReadAllTextAsync(pid)).Trim()));
    }

    [Theory, InlineData(false), InlineData(true)]
    public async Task A_content_stream_that_unpacks_without_end_is_refused(bool apart)
    {
        // 300 MiB of blanks in 300 KB.
        string path = work.Write("bomb.pdf", WithPacked(300 << 20, "/Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Contents 4 0 R/Resources<<>>"));
        using var reader = new ArtworkReader(work.Limits with { Measurer = apart ? Measurer : [] });
        var fault = Assert.Single((await reader.ReadAsync(path, CancellationToken.None)).Faults);
        Assert.Equal("content", fault.Field);
        Assert.Contains("MiB", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_parser_unpacks_by_itself_is_held_by_the_childs_memory()
    {
        // Objects packed together, which the parser unpacks by itself, with 300 MiB of blanks behind them.
        string path = work.Write("bomb.pdf", WithPackedObjects(300 << 20));
        using var wide = new ArtworkReader(work.Limits with { Measurer = Measurer, MeasurerBytes = 3L << 30 });
        Assert.True((await wide.ReadAsync(path, CancellationToken.None)).IsTaken);
        using var narrow = new ArtworkReader(work.Limits with { Measurer = Measurer, MeasurerBytes = 100 << 20 });
        var fault = Assert.Single((await narrow.ReadAsync(path, CancellationToken.None)).Faults);
        Assert.Equal("memory to read", fault.Field);

        // The next file is measured all the same.
        Assert.True((await narrow.ReadAsync(work.Write("page.pdf", HandPdf.Pages(1)), CancellationToken.None)).IsTaken);
    }

    [Fact]
    public async Task A_killed_parent_leaves_no_child_behind()
    {
        string pdf = work.Write("slow-" + Guid.NewGuid().ToString("N") + ".pdf", HandPdf.Page("/MediaBox[0 0 200 100]", "", string.Concat(Enumerable.Repeat("0 0 200 100 re f\n", 400_000))));
        var start = new ProcessStartInfo(Measurer[0]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("check");
        start.ArgumentList.Add(pdf);
        using var parent = Process.Start(start)!;
        while (!parent.HasExited && !Working(pdf).Any(p => p.Contains("gs", StringComparison.Ordinal)))
            await Task.Delay(20);
        Assert.False(parent.HasExited, "The page was done before it could be caught.");
        parent.Kill();
        await parent.WaitForExitAsync();
        while (Working(pdf).Count > 0)
            await Task.Delay(20);
    }

    public void Dispose() => work.Dispose();

    /// <summary>Command lines that name the file.</summary>
    private static IReadOnlyList<string> Working(string path)
    {
        List<string> found = [];
        foreach (string folder in Directory.EnumerateDirectories("/proc").Where(f => int.TryParse(Path.GetFileName(f), out _)))
        {
            try
            {
                string line = File.ReadAllText(folder + "/cmdline").Replace('\0', ' ');
                if (line.Contains(path, StringComparison.Ordinal) && !line.Contains(" check ", StringComparison.Ordinal))
                    found.Add(line);
            }
            catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
            {
                // Ended while it was looked at.
            }
        }

        return found;
    }

    /// <summary>A PDF whose object 4 is a long packed stream.</summary>
    private static byte[] WithPacked(int bytes, string page) => HandPdf.Of(
        "<</Type/Catalog/Pages 2 0 R>>", "<</Type/Pages/Kids[3 0 R]/Count 1>>", "<<" + page + ">>", HandPdf.Stream(Packed([], bytes, ' '), "/Filter/FlateDecode"));

    /// <summary>A PDF whose one page lies, with much behind it, in a packed stream of objects.</summary>
    private static byte[] WithPackedObjects(int bytes)
    {
        var text = new StringBuilder("%PDF-1.6\n");
        List<byte> entries = [0, 0, 0, 0, 0, 0];
        void Add(string body)
        {
            Enter(1, text.Length, 0);
            text.Append(Invariant($"{(entries.Count / 6) - 1} 0 obj\n{body}\nendobj\n"));
        }

        void Enter(byte kind, int place, byte last) => entries.AddRange([kind, (byte)(place >> 24), (byte)(place >> 16), (byte)(place >> 8), (byte)place, last]);

        Add("<</Type/Catalog/Pages 2 0 R>>");
        Add("<</Type/Pages/Kids[5 0 R]/Count 1>>");
        const string Start = "5 0 ", Page = "<</Type/Page/Parent 2 0 R/MediaBox[0 0 200 100]/Resources<<>>>>";
        Add(HandPdf.Stream(Packed(Encoding.Latin1.GetBytes(Start + Page), bytes, ' '), Invariant($"/Type/ObjStm/N 1/First {Start.Length}/Filter/FlateDecode")));
        int table = text.Length;
        Enter(1, table, 0);
        Enter(2, 3, 0);
        text.Append(Invariant($"4 0 obj\n{HandPdf.Stream(Encoding.Latin1.GetString([.. entries]), "/Type/XRef/Size 6/W[1 4 1]/Root 1 0 R")}\nendobj\nstartxref\n{table}\n%%EOF\n"));
        return Encoding.Latin1.GetBytes(text.ToString());
    }

    private static string Packed(ReadOnlySpan<byte> start, int bytes, char filling)
    {
        using var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            byte[] block = new byte[1 << 20];
            Array.Fill(block, (byte)filling);
            deflate.Write(start);
            for (int done = 0; done < bytes; done += block.Length)
                deflate.Write(block);
        }

        return Encoding.Latin1.GetString(packed.ToArray());
    }
}
