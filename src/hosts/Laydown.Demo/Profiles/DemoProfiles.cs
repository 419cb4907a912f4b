using Laydown.Colour.Inversion;
using Laydown.Formats.Icc;

namespace Laydown.Demo.Profiles;

/// <summary>Makes the ICC profiles of the demo's print conditions from the project's own model; everything in them is invented.</summary>
public static class DemoProfiles
{
    private const int ForwardSteps = 13;
    private const int InverseSteps = 33;

    /// <summary>Writes <c>hybrid-boards.icc</c>, <c>hybrid-rolls.icc</c> and <c>plain-boards.icc</c>; the same bytes each time, each
    /// file whole or absent.</summary>
    /// <param name="profilesFolder">Folder for the profiles; made where it is missing.</param>
    /// <param name="cancellation">Stops between rows of nodes.</param>
    public static void Write(string profilesFolder, CancellationToken cancellation)
    {
        Directory.CreateDirectory(profilesFolder);
        foreach (DemoPrint print in DemoPrint.All)
        {
            string path = Path.Combine(profilesFolder, print.FileName);
            string beside = path + ".part";
            File.WriteAllBytes(beside, Make(print, cancellation));
            File.Move(beside, path, overwrite: true);
        }
    }

    /// <summary>The bytes of one profile.</summary>
    public static byte[] Make(DemoPrint print, CancellationToken cancellation)
    {
        ProfileTables tables = ProfileTableMaker.Make(print.Model(), print.Limits, BlackPolicy.Usual, ForwardSteps, InverseSteps, cancellation);
        return OutputProfile.Write(
            tables, print.Description, "No copyright; invented for the demo of Laydown", OutputProfileOptions.Usual with { Limits = print.Limits });
    }
}
