using Laydown.Press.Inks;

namespace Laydown.Shop.Run;

/// <summary>Colours that stand for inks on a screen, the same as beside their names, and the ground they show on; own choice.</summary>
internal static class InkTints
{
    /// <summary>Grey of the bare ground and sRGB of a full laydown. Inks lighter than paper stand on dark grey.</summary>
    public static (byte Ground, (byte Red, byte Green, byte Blue) Ink) Of(InkRole role) => role switch
    {
        InkRole.Cyan => (255, (0x00, 0x93, 0xc8)),
        InkRole.Magenta => (255, (0xc8, 0x32, 0x7c)),
        InkRole.Yellow => (255, (0xe6, 0xcb, 0x00)),
        InkRole.LightCyan => (255, (0x8f, 0xcf, 0xe6)),
        InkRole.LightMagenta => (255, (0xe5, 0xa3, 0xc3)),
        InkRole.White => (0x55, (0xff, 0xff, 0xff)),
        InkRole.Clear => (0x55, (0xc9, 0xd6, 0xc2)),
        _ => (255, (0x16, 0x16, 0x16)),
    };
}
