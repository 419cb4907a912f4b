namespace Laydown.Optics.Looks;

/// <summary>Whether two pictures that must fit each other may lie on both faces of a sheet.</summary>
/// <param name="BothFacesWillDo">Whether their shift stays within the tolerance; if not, print them on one face.</param>
/// <param name="ShiftMm">How far they seem to lie apart at the most slanting view, mm.</param>
/// <param name="HaloRadiusMm">Inner radius of the halo of total reflection round a bright spot, mm.</param>
/// <param name="ThickestMm">The thickest sheet that would do, mm, at most 100.</param>
public sealed record FaceAdvice(bool BothFacesWillDo, double ShiftMm, double HaloRadiusMm, double ThickestMm)
{
    /// <summary>The advice in a sentence.</summary>
    public override string ToString() => BothFacesWillDo
        ? Invariant($"Both faces will do: the pictures seem {ShiftMm:0.00} mm apart at most.")
        : Invariant($"Print on one face: on both they would seem {ShiftMm:0.00} mm apart; a sheet up to {ThickestMm:0.00} mm would do.");
}
