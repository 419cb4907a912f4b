namespace Laydown.Shop.Colour;

/// <summary>How far the colours of a page move when they are printed.</summary>
/// <param name="ItemId">The item.</param>
/// <param name="Page">Page from 1.</param>
/// <param name="ConditionId">Print condition it was computed for.</param>
/// <param name="MeanDeltaE">Mean ΔE00 over all pixels.</param>
/// <param name="MaxDeltaE">Largest ΔE00.</param>
/// <param name="Over2Percent">Share of pixels that move by more than 2 ΔE00, percent.</param>
/// <param name="Over4Percent">By more than 4.</param>
/// <param name="Over6Percent">By more than 6.</param>
/// <param name="PicturePath">The page as the file shows it, PNG.</param>
/// <param name="ProofPath">The page as it will be printed, PNG.</param>
/// <param name="MapPath">Where it moves, PNG: grey under 2, then three bands.</param>
public sealed record ItemShift(
    string ItemId,
    int Page,
    string ConditionId,
    double MeanDeltaE,
    double MaxDeltaE,
    double Over2Percent,
    double Over4Percent,
    double Over6Percent,
    string PicturePath,
    string ProofPath,
    string MapPath);
