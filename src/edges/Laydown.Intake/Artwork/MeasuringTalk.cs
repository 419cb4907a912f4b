using System.Globalization;
using System.Text;
using System.Text.Json;
using Laydown.Artwork.Pages;
using Laydown.Formats.Json;
using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>The words between a process and the one that measures files for it.</summary>
internal static class MeasuringTalk
{
    private const int MostLine = 20;

    /// <summary>Asks for a file and waits for the answer.</summary>
    /// <exception cref="InvalidDataException">The answer is none.</exception>
    /// <exception cref="IOException">The other side is gone.</exception>
    public static async Task<Reading<ArtworkFile>> AskAsync(TextWriter questions, Stream answers, string path, IntakeLimits limits, CancellationToken cancellation)
    {
        await questions.WriteLineAsync(JsonSerializer.Serialize(new Question(path, limits)).AsMemory(), cancellation);
        await questions.FlushAsync(cancellation);
        byte[] bytes = new byte[await LengthAsync(answers, cancellation)];
        await answers.ReadExactlyAsync(bytes, cancellation);
        var answer = JsonSerializer.Deserialize<Answer>(bytes, LaydownJson.Options);
        return answer switch
        {
            { File: not null } => Reading.Of(answer.File),
            { Faults.Count: > 0 } => Reading.Refused<ArtworkFile>(answer.Faults),
            _ => throw new InvalidDataException("answer: found neither a file nor faults"),
        };
    }

    /// <summary>Answers questions until there are no more; returns at once when the other side is gone, even amid a file.</summary>
    /// <param name="questions">One a line.</param>
    /// <param name="answers">Takes the answers.</param>
    /// <param name="measure">Measures a file within limits.</param>
    public static async Task AnswerAsync(TextReader questions, Stream answers, Func<string, IntakeLimits, Task<Reading<ArtworkFile>>> measure)
    {
        var next = Task.Run(questions.ReadLine);
        while (await next is { } line)
        {
            next = Task.Run(questions.ReadLine);
            var question = JsonSerializer.Deserialize<Question>(line) ?? throw new InvalidDataException("question: found none");
            var work = Task.Run(() => measure(question.Path, question.Limits));
            if (await Task.WhenAny(work, next) == next)
                return;
            var reading = await work;
            byte[] answer = JsonSerializer.SerializeToUtf8Bytes(new Answer(reading.IsTaken ? reading.Value : null, reading.Faults), LaydownJson.Options);
            await answers.WriteAsync(Encoding.ASCII.GetBytes(Invariant($"{answer.Length}\n")));
            await answers.WriteAsync(answer);
            await answers.FlushAsync();
        }
    }

    private static async Task<int> LengthAsync(Stream answers, CancellationToken cancellation)
    {
        var digits = new StringBuilder();
        byte[] one = new byte[1];
        while (digits.Length < MostLine)
        {
            await answers.ReadExactlyAsync(one, cancellation);
            if (one[0] == '\n')
                break;
            digits.Append((char)one[0]);
        }

        return int.TryParse(digits.ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int length) && length <= LaydownJson.MaxBytes
            ? length
            : throw new InvalidDataException("answer: found no length");
    }

    private sealed record Question(string Path, IntakeLimits Limits);

    private sealed record Answer(ArtworkFile? File, IReadOnlyList<InputFault> Faults);
}
