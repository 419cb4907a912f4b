using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Laydown.Layout.Sheets;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>A short mark by which a layout is known again: on the set-up sheet, in the press files, on the page.</summary>
/// <remarks>Made of what is laid where alone, so that a record which learns new fields keeps its mark.</remarks>
public static class LayoutMark
{
    /// <summary>The mark: 16 hex digits of a SHA-256.</summary>
    public static string Of(IReadOnlyList<SheetLayout> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        StringBuilder text = new();
        foreach (SheetLayout sheet in sheets)
        {
            text.Append(CultureInfo.InvariantCulture, $"{Mm(sheet.Sheet.WidthMm)} {Mm(sheet.Sheet.HeightMm)} x{sheet.Repeats} {sheet.StockId}{(sheet.Faces is { } faces ? Invariant($" {faces.Turn}{(faces.OneFile ? " one file" : "")}") : "")}\n");
            foreach (Placement p in sheet.Placements)
                text.Append(CultureInfo.InvariantCulture, $"{p.PieceId} {Rect(p.Place)} {p.QuarterTurns} {(p.Locked ? "locked" : "")}{(p.BackUp ? " back" : "")} {(p.Part is { } part ? Rect(part) : "")}\n");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())))[..16];
    }

    /// <summary>The mark as people read it out, such as <c>3F9A-12C4</c>: its first half.</summary>
    public static string Short(string mark)
    {
        ArgumentNullException.ThrowIfNull(mark);
        string upper = mark.ToUpperInvariant();
        return upper.Length < 8 ? upper : Invariant($"{upper[..4]}-{upper[4..8]}");
    }

    private static string Rect(RectMm r) => Invariant($"{Mm(r.XMm)},{Mm(r.YMm)},{Mm(r.WidthMm)},{Mm(r.HeightMm)}");

    private static string Mm(double mm) => mm.ToString("0.###", CultureInfo.InvariantCulture);
}
