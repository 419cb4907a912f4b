using Laydown.Measures;
using NetVips;

namespace Laydown.Intake.Artwork;

/// <summary>Damage that shows only while pixels are made, and a full disk, become faults.</summary>
internal static class WorkFaults
{
    /// <summary>Runs the work; what it throws for damage or for the disk is returned as a fault.</summary>
    public static async Task<Reading<T>> GuardedAsync<T>(string file, int page, Func<Task<Reading<T>>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception failure) when (Of(file, page, failure) is not null)
        {
            return Reading.Refused<T>(Of(file, page, failure)!);
        }
    }

    /// <summary>Runs the work; what it throws for damage or for the disk is returned among its faults.</summary>
    public static async Task<IReadOnlyList<InputFault>> OfAsync(string file, int page, Func<Task<IReadOnlyList<InputFault>>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception failure) when (Of(file, page, failure) is not null)
        {
            return [Of(file, page, failure)!];
        }
    }

    private static InputFault? Of(string file, int page, Exception failure) => failure switch
    {
        VipsException damage => new(file, page, "image data", damage.Message.ReplaceLineEndings(" ").Trim(), "an image that decodes without errors"),
        IOException or UnauthorizedAccessException => new(file, page, "disk", failure.Message, "room for work files and leave to write them"),
        _ => null,
    };
}
