namespace Laydown.Layout.Sheets;

/// <summary>How sheets or blanks lie on the belt.</summary>
/// <param name="BeltWidthMm">Width of the belt, mm.</param>
/// <param name="AcrossMm">What one sheet takes across the belt, mm; the widest where lanes take different ones.</param>
/// <param name="FeedMm">What one sheet takes along the feed, mm; the longest where lanes take different ones.</param>
/// <param name="Turned">Whether the sheet lies turned, its width along the feed; where lanes take different ones, whether all of them do.</param>
/// <param name="Lanes">Lanes in use; one for boards and rolls.</param>
/// <param name="OpenZones">Ids of the vacuum zones to open.</param>
/// <param name="ShutZones">Ids of the vacuum zones to shut.</param>
/// <param name="UncoveredMm">Length of open zone under no sheet, over the belt's width, mm.</param>
/// <param name="FrontLay">Front lay used: <c>pins</c> for boards and blanks, <c>none</c> for rolls.</param>
/// <param name="Side">Where the one who loads stands; lanes are loaded in the order they tell.</param>
public sealed record BeltPlace(
    double BeltWidthMm,
    double AcrossMm,
    double FeedMm,
    bool Turned,
    IReadOnlyList<Lane> Lanes,
    IReadOnlyList<string> OpenZones,
    IReadOnlyList<string> ShutZones,
    double UncoveredMm,
    string FrontLay,
    LoadSide Side = LoadSide.Front);
