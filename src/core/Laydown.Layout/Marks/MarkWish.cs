namespace Laydown.Layout.Marks;

/// <summary>Which marks are printed about the pieces of an item, and their measures. All are plain shapes in black on a bare ground; none lies within the finished piece.</summary>
/// <param name="Labels">Whether each piece carries its name, number and upper side in words.</param>
/// <param name="Codes">Whether each piece carries its id as a QR code.</param>
/// <param name="Cut">Whether the corners of the finished piece are marked.</param>
/// <param name="Register">Whether discs for a camera stand about all pieces of the sheet.</param>
/// <param name="Finishing">Whether folds, seams of pockets and eyelets are marked in the allowance of hems and pockets.</param>
/// <param name="LabelMm">Height of letters, mm; 1.5 to 50.</param>
/// <param name="CodeMm">Side of a code with its quiet zone, mm; 10 to 200.</param>
/// <param name="CutMarkMm">Length of a cut mark, mm; 2 to 100.</param>
/// <param name="CutMarkOffMm">Distance of cut marks from the printed piece, mm; 0 to 50.</param>
/// <param name="LineMm">Width of lines, mm; 0.1 to 5.</param>
/// <param name="DiscMm">Diameter of discs, mm; 2 to 30.</param>
/// <param name="DiscClearMm">What stays bare between a disc and the pieces, mm; 0 to 100.</param>
/// <param name="DiscPitchMm">Most between two discs, mm; 100 to 10 000.</param>
public sealed record MarkWish(
    bool Labels = true,
    bool Codes = true,
    bool Cut = false,
    bool Register = false,
    bool Finishing = true,
    double LabelMm = 4,
    double CodeMm = 24,
    double CutMarkMm = 8,
    double CutMarkOffMm = 2,
    double LineMm = 0.5,
    double DiscMm = 8,
    double DiscClearMm = 10,
    double DiscPitchMm = 1200)
{
    /// <summary>Room that label and code want beside a piece, mm; 0 where neither is wanted.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double StripMm => Math.Max(Codes ? CodeMm : 0, Labels ? LabelMm * 1.6 : 0);

    /// <summary>Room that cut marks want on every side, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double CutRoomMm => Cut ? CutMarkMm + CutMarkOffMm : 0;

    /// <summary>Room that discs want about all pieces, mm.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double RegisterRoomMm => Register ? DiscMm + DiscClearMm + DiscMarks.GroundMm : 0;
}
