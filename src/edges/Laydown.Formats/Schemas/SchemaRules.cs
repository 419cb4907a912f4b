using System.Text.Json.Nodes;
using System.Text.Json.Schema;

namespace Laydown.Formats.Schemas;

/// <summary>Ranges and forms of single fields, put on the schema that follows from the records.</summary>
/// <remarks>A rule is found by <c>Type.property</c>, then by <c>property</c>, then by the unit at the end of the name.</remarks>
internal static class SchemaRules
{
    private static readonly Action<JsonObject> Id = Form("^[a-z0-9]+(-[a-z0-9]+)*$", 60, "a short name of lower-case letters, digits and hyphens");
    private static readonly Action<JsonObject> Number = Form("^[A-Za-z0-9]+([-.][A-Za-z0-9]+)*$", 60, "a number of letters, digits, hyphens and dots");
    private static readonly Action<JsonObject> FileName =
        Form(@"^(?!\.)[^/\\:*?""<>|\u0000-\u001f]+$", 200, "a file name without folder");

    private static readonly Dictionary<string, Action<JsonObject>> Rules = new(StringComparer.Ordinal)
    {
        ["PressDescription.id"] = Id,
        ["InkSet.id"] = Id,
        ["InkOptics.id"] = Id,
        ["Stock.id"] = Id,
        ["PrintCondition.id"] = Id,
        ["Mode.id"] = Id,
        ["LibraryColour.id"] = Id,
        ["LibraryColour.source"] = Text(1, 400),
        ["LabColour.l"] = From(0, 100),
        ["LabColour.a"] = From(-128, 128),
        ["LabColour.b"] = From(-128, 128),
        ["colours"] = Entries(0, 10_000),
        ["firstNm"] = From(300, 400),
        ["stepNm"] = From(1, 20),
        ["LibrarySpectrum.values"] = Both(Entries(11, 1000), Each(From(0, 2))),
        ["Order.id"] = Number,
        ["Item.id"] = Number,
        ["Run.id"] = Number,
        ["Channel.id"] = Number,
        ["Tank.id"] = Number,
        ["VacuumZone.id"] = Number,
        ["RollStation.id"] = Number,
        ["pressId"] = Id,
        ["inkSetId"] = Id,
        ["opticsId"] = Id,
        ["stockId"] = Id,
        ["conditionId"] = Id,
        ["modeIds"] = Both(Entries(1, 100), Each(Id)),
        ["stockIds"] = Both(Entries(1, 1000), Each(Id)),
        ["Item.artwork"] = FileName,
        ["Item.backArtwork"] = FileName,
        ["ArtworkFile.name"] = FileName,
        ["profile"] = Text(0, 2000),
        ["PrintCondition.profile"] = FileName,
        ["inkProfile"] = FileName,
        ["inkLink"] = FileName,
        ["Characterisation.folder"] = FileName,
        ["readings"] = Text(1, 200),
        ["ShopFile.address"] = Form(@"^https?://[^\s/?#]+(/[^\s?#]*)?$", 200, "an address of pages, such as http://press-room:5080"),
        ["releasers"] = Both(Entries(0, 100), Each(Text(1, 100))),
        ["OpticsFit.readings"] = Text(1, 1000),
        ["OpticsFit.patches"] = Entries(0, 10_000),
        ["OpticsFit.warnings"] = Entries(0, 1000),
        ["meanDeltaTPercent"] = From(0, 100),
        ["p95DeltaTPercent"] = From(0, 100),
        ["maxDeltaTPercent"] = From(0, 100),
        ["OpticsResidual.deltaE"] = From(0, 1000),
        ["deltaYPercent"] = From(-200, 200),

        // Signs, ranges and the number of bands are checked beside the record, so that the message names ink and band.
        ["absorption"] = Entries(1, 1000),
        ["scatter"] = Entries(1, 1000),
        ["absorptionError"] = Both(Entries(1, 1000), Each(From(0, null))),
        ["scatterError"] = Both(Entries(1, 1000), Each(From(0, null))),
        ["fitted"] = Day,
        ["patches"] = From(1, 1_000_000),
        ["meanDeltaE"] = From(0, 200),
        ["p95DeltaE"] = From(0, 200),
        ["maxDeltaE"] = From(0, 200),
        ["sha256"] = Form("^[0-9a-f]{64}$", 64, "64 lower-case hex digits"),
        ["name"] = Text(1, 200),
        ["title"] = Text(1, 200),
        ["customer"] = Text(1, 200),
        ["currency"] = Form("^[A-Z]{3}$", 3, "three capital letters, such as EUR"),

        // Sizes and places.
        ["Lane.blankId"] = Text(1, 200),
        ["cutsAcrossMm"] = Both(Entries(0, 100_000), Each(From(0, 1_000_000))),
        ["widthMm"] = Over(0, 100_000),
        ["heightMm"] = Over(0, 100_000),
        ["lengthMm"] = Over(0, 100_000),
        ["beltWidthMm"] = Over(0, 100_000),
        ["maxSheetLengthMm"] = Over(0, 100_000),
        ["maxWidthMm"] = Over(0, 100_000),
        ["maxDiameterMm"] = Over(0, 2000),
        ["SizeMm.widthMm"] = From(0, 1_000_000),
        ["SizeMm.heightMm"] = From(0, 1_000_000),
        ["RectMm.widthMm"] = From(0, 1_000_000),
        ["RectMm.heightMm"] = From(0, 1_000_000),
        ["LineUse.widthMm"] = From(0, 1_000_000),
        ["xMm"] = From(-1_000_000, 1_000_000),
        ["yMm"] = From(-1_000_000, 1_000_000),
        ["thicknessMm"] = Over(0, 200),
        ["maxThicknessMm"] = Over(0, 200),
        ["thicknessToleranceMm"] = From(0, 20),
        ["bowMm"] = From(0, 200),
        ["bleedMm"] = From(0, 500),
        ["ArtworkPage.bleedMm"] = Leave,
        ["Order.received"] = Day,
        ["due"] = Day,
        ["whiteChokeMm"] = From(-50, 50),
        ["blockOutChokeMm"] = From(-50, 50),
        ["chokeMm"] = From(-50, 50),
        ["featherMm"] = From(-10, 10),
        ["minFeatureMm"] = From(-10, 10),
        ["keepOutsMm"] = Entries(0, 1000),
        ["LayoutJob.name"] = Text(0, 200),
        ["LayoutJob.pieces"] = Entries(1, 200_000),
        ["LayoutJob.stocks"] = Entries(0, 1000),
        ["JobPiece.id"] = Text(1, 120),
        ["JobPiece.anglesDegrees"] = Entries(1, 3600),
        ["JobPiece.direction"] = Text(1, 120),
        ["keepWith"] = Text(1, 120),
        ["oversAllowed"] = From(0, 100_000),
        ["asked"] = From(0, 100_000),
        ["JobContour.outerMm"] = Entries(6, 1_000_000),
        ["JobContour.holesMm"] = Entries(0, 10_000),
        ["JobContour.path"] = Text(1, 20_000),
        ["JobContour.file"] = FileName,
        ["JobStock.id"] = Text(1, 120),
        ["JobPiece.stockId"] = Text(1, 120),
        ["JobStock.pricePerMetre"] = From(0, 1_000_000),
        ["JobRules.pricePerMetre"] = From(0, 1_000_000),
        ["JobRules.rollsSideBySide"] = From(1, 2),
        ["JobRules.acrossMm"] = Over(0, 100_000),
        ["JobRules.centreGapMm"] = From(0, 10_000),
        ["JobRules.longestSectionMm"] = From(0, 1_000_000),
        ["JobBelt.widthMm"] = From(1, 100_000),
        ["JobBelt.maxFeedMm"] = From(1, 100_000),
        ["JobBelt.laysMm"] = Both(Entries(1, 1000), Each(From(0, 100_000))),
        ["JobBelt.pinsMm"] = Both(Entries(2, 1000), Each(From(0, 100_000))),
        ["JobBelt.maxLanes"] = From(1, 64),
        ["JobBelt.zones"] = Entries(0, 16),
        ["JobBelt.laneGapMm"] = From(0, 10_000),
        ["JobBelt.metresPerHour"] = From(0.001, 100_000),
        ["JobBelt.holdSharePercent"] = From(0, 100),
        ["JobBelt.pinSpreadPercent"] = From(0, 100),
        ["JobBelt.pinInsetMm"] = From(0, 10_000),
        ["JobBelt.loadSeconds"] = From(0, 3600),
        ["JobLanes.feedMm"] = From(0, 1_000_000_000),
        ["JobLanes.piecesPerHour"] = From(0, 1_000_000_000),
        ["BeltZone.id"] = Text(1, 60),
        ["JobStock.copies"] = From(0, 1_000_000),
        ["JobStock.price"] = From(0, 1_000_000_000),
        ["JobRules.toolMm"] = From(0, 100),
        ["JobRules.gapMm"] = From(0, 1000),
        ["JobRules.offcutLeastSideMm"] = From(1, 100_000),
        ["JobLayout.sheets"] = Entries(0, 200_000),
        ["JobLayout.unplaced"] = Entries(0, 200_000),
        ["JobSheet.stockId"] = Text(1, 120),
        ["JobSheet.repeats"] = From(1, 200_000),
        ["JobSheet.spots"] = Entries(0, 200_000),
        ["JobSpot.pieceId"] = Text(1, 120),
        ["JobSpot.copy"] = From(1, 200_000),
        ["JobSpot.angleDegrees"] = Both(From(0, null), r => r["exclusiveMaximum"] = 360),
        ["PieceOutline.outer"] = Entries(3, 100_000),
        ["PieceOutline.holes"] = Entries(0, 10_000),
        ["Placement.angleDegrees"] = From(0, 270),
        ["frontPins"] = Both(Entries(2, 1000), Each(From(0, 100_000))),
        ["lays"] = Both(Entries(0, 100), Each(From(0, 100_000))),
        ["HeadGap.mm"] = From(0, 30),
        ["viewingDistanceM"] = Over(0, 1000),
        ["quantity"] = From(1, 100_000),
        ["artworkScale"] = From(1, 100),
        ["finishing"] = Entries(0, 50),
        ["countEach"] = From(1, 10_000),
        ["onHand"] = From(0, 1_000_000),
        ["reorderAt"] = From(0, 1_000_000),
        ["orderTo"] = From(0, 1_000_000),

        // Panels, marks, steps.
        ["overlapLeastMm"] = From(-1000, 1000),
        ["PanelWish.seamBleedMm"] = From(0, 50),
        ["overlapMostMm"] = From(-1000, 1000),
        ["givenMm"] = Both(Entries(1, 200), Each(From(1, 100_000))),
        ["leastWidthMm"] = From(1, 100_000),
        ["seamsAtMm"] = Both(Entries(0, 200), Each(From(-1000, 100_000))),
        ["levelSeamsAtMm"] = Both(Entries(0, 200), Each(From(-1000, 100_000))),
        ["seamSlackMm"] = From(0, 1000),
        ["elsewhereCost"] = From(0, 1_000_000),
        ["staggerMm"] = From(0, 10_000),
        ["seamKeepOuts"] = Entries(0, 1000),
        ["costPerMm"] = From(0, 1_000_000),
        ["what"] = Text(0, 200),
        ["textPlaces"] = Entries(0, 500),
        ["Finishing.widthMm"] = From(1, 500),
        ["insetMm"] = From(0, 1000),
        ["edges"] = Entries(1, 4),
        ["labelMm"] = From(1.5, 50),
        ["codeMm"] = From(10, 200),
        ["cutMarkMm"] = From(2, 100),
        ["cutMarkOffMm"] = From(0, 50),
        ["lineMm"] = From(0.1, 5),
        ["discMm"] = From(2, 30),
        ["discClearMm"] = From(0, 100),
        ["discPitchMm"] = From(100, 10_000),
        ["gapAcrossMm"] = From(0, 1000),
        ["gapUpMm"] = From(0, 1000),
        ["registerMm"] = From(0, 50),
        ["TurnWish.registerMm"] = Over(0, 50),
        ["layErrorMm"] = From(0, 10),
        ["sizeToleranceMm"] = From(0, 20),
        ["maxInkMlPerM2"] = Over(0, 1000),

        // Percentages that end elsewhere than at 1000.
        ["overheadPercent"] = From(0, 500),
        ["marginPercent"] = Both(From(0, null), r => r["exclusiveMaximum"] = 100),
        ["taxPercent"] = From(0, 100),
        ["spoilPercent"] = From(0, 100),
        ["reflectancePercent"] = From(0, 100),
        ["transmittancePercent"] = From(0, 100),
        ["openAreaPercent"] = From(0, 100),
        ["loadOverlapPercent"] = From(0, 100),
        ["lampPercent"] = From(0, 100),
        ["limitPercent"] = Over(0, 100),
        ["totalLimitPercent"] = Over(0, 1000),
        ["lightInkTakeOverPercent"] = From(0, 100),
        ["whitePercent"] = From(0, 200),
        ["strengthPercent"] = Over(0, 200),
        ["blockOutPercent"] = Over(0, 200),
        ["backPercent"] = Over(0, 100),
        ["whiteLayerPercent"] = Over(0, 200),
        ["curve"] = Both(Entries(2, 4097), Each(From(0, 100))),
        ["strengthCurve"] = Both(Entries(2, 1000), Each(From(0, 100))),

        // The press.
        ["maxLanes"] = From(0, 50),
        ["maxLayers"] = From(1, 50),
        ["zones"] = Entries(1, 100),
        ["channels"] = Entries(1, 64),
        ["tanks"] = Entries(1, 64),
        ["modes"] = Entries(1, 100),
        ["rolls"] = Entries(0, 20),
        ["inks"] = Entries(1, 64),
        ["Run.inks"] = Entries(0, 64),
        ["Order.items"] = Entries(1, 1000),
        ["nozzles"] = From(1, 1_000_000),
        ["nozzlesPerInch"] = From(1, 10_000),
        ["scanDpi"] = From(50, 10_000),
        ["feedDpi"] = From(50, 10_000),
        ["passes"] = From(1, 1000),
        ["nozzlesUsed"] = From(1, 1_000_000),
        ["feedRows"] = From(1, 1_000_000),
        ["contonePpi"] = From(20, 5000),
        ["featherNozzles"] = From(0, 1_000_000),
        ["feedScaleUmPerM"] = From(-10_000, 10_000),
        ["feedJitterUm"] = From(0, 1000),
        ["twoWayUm"] = From(0, 3000),
        ["nozzleStates"] = Entries(0, 100),
        ["missing"] = Both(Entries(0, 10_000), Each(From(0, 1_000_000))),
        ["slanted"] = Entries(0, 10_000),
        ["nozzle"] = From(0, 1_000_000),
        ["offsetUm"] = From(-3000, 3000),
        ["dropsPl"] = Both(Entries(1, 16), Each(Over(0, 1000))),
        ["speedMPerS"] = Over(0, 20),
        ["returnSpeedMPerS"] = Over(0, 20),
        ["dropSpeedMPerS"] = Over(0, 50),
        ["accelerationMPerS2"] = Over(0, 100),
        ["firingKhz"] = Over(0, 1000),
        ["capacityMl"] = Over(0, 1_000_000),
        ["wavelengthNm"] = From(200, 500),
        ["irradianceWPerCm2"] = Over(0, 1000),
        ["windowMm"] = Over(0, 1000),
        ["Lamp.count"] = From(1, 20),
        ["fullKpa"] = From(0, 100),
        ["maxMassKg"] = Over(0, 10_000),

        // The stock room and upkeep in files of their own.
        ["StockLot.id"] = Number,
        ["StockMove.lotId"] = Number,
        ["StockLot.bornOf"] = Number,
        ["StockMove.runId"] = Number,
        ["StockReservation.runId"] = Number,
        ["PressUse.runId"] = Number,
        ["StockLot.place"] = Text(1, 200),
        ["StockMove.place"] = Text(1, 200),
        ["InkPack.place"] = Text(1, 200),
        ["StockMove.by"] = Text(1, 100),
        ["StockLot.onHand"] = From(0, 1_000_000),
        ["StockMove.quantity"] = From(0, 1_000_000),
        ["StockReservation.quantity"] = From(0, 1_000_000),
        ["StockRoomFile.stocks"] = Entries(1, 1000),
        ["StockRoomFile.lots"] = Entries(0, 100_000),
        ["StockRoomFile.moves"] = Entries(0, 100_000),
        ["StockLot.reserved"] = Entries(0, 10_000),
        ["StockLot.since"] = Day,
        ["TankState.expires"] = Day,
        ["InkPack.expires"] = Day,
        ["TankState.lot"] = Text(1, 100),
        ["InkPack.lot"] = Text(1, 100),
        ["PressState.tanks"] = Entries(0, 64),
        ["PressUse.name"] = Text(0, 2000),
        ["PressUse.inks"] = Entries(0, 64),

        // Care of a press.
        ["CareRule.id"] = Id,
        ["CareRule.by"] = Text(1, 100),
        ["CareRule.source"] = Text(1, 400),
        ["LongStopRules.source"] = Text(1, 400),
        ["PressCare.rules"] = Entries(0, 200),
        ["everyHours"] = Over(0, 100_000),
        ["everyPrintHours"] = Over(0, 100_000),
        ["everyMl"] = Over(0, 10_000_000),
        ["everyDays"] = From(1, 10_000),
        ["limitHours"] = Over(0, 10_000),
        ["whiteLimitHours"] = Over(0, 10_000),
        ["fluidMlPerLine"] = From(0, 100_000),
        ["inkLostMlPerLine"] = From(0, 100_000),
        ["inkMlPerLine"] = From(0, 100_000),
        ["shortRunInkMlPerLine"] = From(0, 100_000),
        ["fillMinutesPerLine"] = From(0, 1000),
        ["backMinutesPerLine"] = From(0, 1000),
        ["shortRunMinutes"] = Over(0, 1000),
        ["visitMinutes"] = From(0, 1000),
        ["fluidPerLitre"] = Price,
        ["packMl"] = Over(0, 1_000_000),
        ["leadDays"] = From(0, 365),

        // The calendar.
        ["timeZone"] = Text(1, 60),
        ["ShopCalendar.shifts"] = Entries(1, 100),
        ["WeekShift.days"] = Entries(1, 7),
        ["WeekShift.start"] = Clock,
        ["WeekShift.end"] = Clock,
        ["DayTime.start"] = Clock,
        ["DayTime.end"] = Clock,
        ["DayTime.day"] = Day,
        ["ShopHoliday.first"] = Day,
        ["ShopHoliday.last"] = Day,
        ["ShopCalendar.holidays"] = Entries(0, 1000),
        ["ShopCalendar.extra"] = Entries(0, 1000),
        ["ShopCalendar.closed"] = Entries(0, 1000),
        ["ShopCalendar.benches"] = Entries(0, 50),
        ["WorkBench.id"] = Id,
        ["WorkBench.kinds"] = Entries(1, 20),
        ["WorkBench.places"] = From(1, 20),
        ["WorkBench.shifts"] = Entries(1, 100),
        ["crew"] = From(1, 100),
        ["pressIds"] = Both(Entries(1, 100), Each(Id)),

        // Inks and stocks.
        ["densityGPerMl"] = From(0.5, 5),
        ["strength"] = Over(0, 1),
        ["solidDensity"] = From(0, 10),
        ["doseMjPerCm2"] = From(0, 100_000),
        ["weightGPerM2"] = Over(0, 200_000),
        ["youngGpa"] = From(0, 1000),
        ["growthPpmPerK"] = From(-100, 1000),
        ["maxTemperatureC"] = From(0, 1000),
        ["specificHeatJPerKgK"] = From(100, 5000),
        ["conductivityWPerMK"] = From(0.01, 500),
        ["roomLux"] = From(0, 200_000),
        ["Stock.price"] = Price,
        ["pricePerLitre"] = Price,
        ["perHour"] = Price,
        ["labourPerHour"] = Price,
        ["materialPerUnit"] = Price,
        ["quoteValidDays"] = From(1, 1000),
        ["overheads"] = Entries(1, 20),
        ["QuoteJob.items"] = Entries(1, 1000),
        ["QuoteJob.quantities"] = Both(Entries(1, 100), Each(From(1, 100_000))),
        ["QuoteJob.orderId"] = Number,
        ["QuoteJob.day"] = Day,
        ["QuoteJob.pressPerHour"] = Price,
        ["QuoteJobItem.id"] = Number,
        ["QuoteJobItem.pieces"] = From(1, 100_000),
        ["QuoteJobItem.minutesEach"] = From(0, 10_000),
        ["QuoteJobItem.materials"] = Entries(0, 100),
        ["QuoteJobItem.inks"] = Entries(0, 64),
        ["QuoteJobItem.bought"] = Entries(0, 100),
        ["JobMaterial.price"] = Price,
        ["JobMaterial.once"] = From(0, 1_000_000),
        ["JobMaterial.each"] = From(0, 1_000_000),
        ["JobFinishing.unitsEach"] = From(0, 100_000),
        ["JobBought.once"] = Price,
        ["JobBought.each"] = Price,
        ["OverheadRate.name"] = Text(1, 100),
        ["OverheadRate.perYear"] = Budget,
        ["OverheadRate.basePerYear"] = Over(0, 1_000_000_000),
        ["variablePerUnit"] = Price,
        ["roundToCents"] = From(1, 100_000),
        ["smallestNet"] = Price,
        ["offcutCreditPercent"] = From(0, 100),
        ["minutesFirst"] = From(0, 10_000),
        ["minutesPerUnit"] = From(0, 10_000),
        ["page"] = From(1, 1_000_000),
        ["artworkPage"] = From(1, 100_000),
        ["maskPage"] = From(1, 100_000),
        ["BuildWish.layers"] = Entries(1, 50),
    };

    private static readonly (string End, Action<JsonObject> Rule)[] Ends =
    [
        ("Mm", From(0, 100_000)), ("Percent", From(0, 1000)), ("Ml", From(0, 1_000_000)), ("Seconds", From(0, 86_400)), ("Minutes", From(0, 100_000)),
    ];

    /// <summary>Puts the rule of a field on its node.</summary>
    public static JsonNode Apply(JsonSchemaExporterContext context, JsonNode node)
    {
        if (node is not JsonObject rule)
            return node;
        MayBeLeftOut(rule);
        if (context.PropertyInfo is not { } property)
            return node;

        (Rules.GetValueOrDefault(Invariant($"{property.DeclaringType.Name}.{property.Name}"))
            ?? Rules.GetValueOrDefault(property.Name)
            ?? Array.Find(Ends, e => property.Name.EndsWith(e.End, StringComparison.Ordinal)).Rule
            ?? Leave)(rule);
        Fallback(rule);
        return rule;
    }

    /// <summary>A field that may be null may be left out: people write these files.</summary>
    private static void MayBeLeftOut(JsonObject rule)
    {
        if (rule["properties"] is not JsonObject fields || rule["required"] is not JsonArray required)
            return;
        foreach (string name in fields.Where(f => f.Value is JsonObject r && TakesNull(r)).Select(f => f.Key))
            required.RemoveAll(n => (string)n! == name);
    }

    private static bool TakesNull(JsonObject rule) => Is(rule, "null") || (rule["enum"] is JsonArray words && words.Any(w => w is null));

    private static void Fallback(JsonObject rule)
    {
        // Nothing is without end: a text and a list get a ceiling even where no rule names one.
        if (Is(rule, "string") && !rule.ContainsKey("maxLength") && !rule.ContainsKey("enum") && !rule.ContainsKey("format"))
            rule["maxLength"] = 4000;
        if (Is(rule, "array") && !rule.ContainsKey("maxItems"))
            rule["maxItems"] = 100_000;
        if (rule["items"] is JsonObject each)
            Fallback(each);
    }

    private static bool Is(JsonObject rule, string type) =>
        rule["type"] is JsonArray several ? several.Any(t => (string)t! == type) : rule["type"] is { } one && (string)one! == type;

    private static void Leave(JsonObject rule)
    {
    }

    private static void Day(JsonObject rule) => rule["format"] = "date";

    private static void Clock(JsonObject rule)
    {
        rule.Remove("format");
        Form("^([01][0-9]|2[0-3]):[0-5][0-9](:00)?$", 8, "a local time such as 06:00")(rule);
    }

    private static void Price(JsonObject rule) => From(0, 100_000_000)(rule["properties"]!["cents"]!.AsObject());

    private static void Budget(JsonObject rule) => From(0, 10_000_000_000)(rule["properties"]!["cents"]!.AsObject());

    private static Action<JsonObject> From(double least, double? most) => r =>
    {
        r["minimum"] = least;
        if (most is { } m)
            r["maximum"] = m;
    };

    private static Action<JsonObject> Over(double over, double most) => r =>
    {
        r["exclusiveMinimum"] = over;
        r["maximum"] = most;
    };

    private static Action<JsonObject> Text(int shortest, int longest) => r =>
    {
        if (shortest > 0)
            r["minLength"] = shortest;
        r["maxLength"] = longest;
    };

    private static Action<JsonObject> Form(string pattern, int longest, string words) => r =>
    {
        r["description"] = words;
        r["pattern"] = pattern;
        r["maxLength"] = longest;
    };

    private static Action<JsonObject> Entries(int fewest, int most) => r =>
    {
        if (fewest > 0)
            r["minItems"] = fewest;
        r["maxItems"] = most;
    };

    // A type met before is referred to: its entries have their rule there.
    private static Action<JsonObject> Each(Action<JsonObject> rule) => r =>
    {
        if (!r.ContainsKey("$ref"))
            rule(r["items"]!.AsObject());
    };

    private static Action<JsonObject> Both(Action<JsonObject> one, Action<JsonObject> other) => one + other;
}
