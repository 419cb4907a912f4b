using QRCoder;
using SkiaSharp;

namespace Laydown.Demo.Art;

/// <summary>Bar codes as rectangles: EAN-13 and QR.</summary>
internal static class Codes
{
    // Seven modules for each digit of set A after GS1; B is A mirrored and turned, C is A turned. The first digit picks A or B.
    private static readonly string[] SetA = ["0001101", "0011001", "0010011", "0111101", "0100011", "0110001", "0101111", "0111011", "0110111", "0001011"];
    private static readonly string[] Choice = ["AAAAAA", "AABABB", "AABBAB", "AABBBA", "ABAABB", "ABBAAB", "ABBBAA", "ABABAB", "ABABBA", "ABBABA"];

    /// <summary>Twelve digits with their check digit: weights 1 and 3 by turns, sum up to a multiple of ten [GS1-Check].</summary>
    public static string WithCheckDigit(string twelve)
    {
        int sum = twelve.Select((c, i) => (c - '0') * (i % 2 == 0 ? 1 : 3)).Sum();
        return twelve + (char)('0' + ((10 - (sum % 10)) % 10));
    }

    /// <summary>EAN-13 with its digits; <paramref name="x"/> is the first bar. Quiet zones are left by who calls: 11 modules before, 7 after.</summary>
    public static void Ean13(Picture picture, string digits, double x, double y, double moduleMm, double heightMm)
    {
        string modules = Modules(digits);
        Outline bars = new();
        for (int i = 0; i < modules.Length; i++)
        {
            if (modules[i] == '0')
                continue;
            int from = i;
            while (i + 1 < modules.Length && modules[i + 1] == '1')
                i++;
            bool guard = from < 3 || from >= 92 || (from >= 45 && from < 50);
            bars.And(Outline.Rect(x + (from * moduleMm), y, (i - from + 1) * moduleMm, heightMm + (guard ? 5 * moduleMm : 0)));
        }

        picture.Fill(bars, Paint.Ink);
        double size = 9.2 * moduleMm;
        double line = y + heightMm + (8.6 * moduleMm);
        picture.Write(digits[..1], Face.Regular, size, x - (8.5 * moduleMm), line, Paint.Ink);
        for (int i = 0; i < 12; i++)
        {
            double centre = x + ((i < 6 ? 3 + (7 * i) : 50 + (7 * (i - 6))) + 3.5) * moduleMm;
            picture.WriteCentred(digits.Substring(i + 1, 1), Face.Regular, size, centre, line, Paint.Ink);
        }
    }

    /// <summary>QR code of medium correction, with its four quiet modules left white, over a square of about <paramref name="size"/> mm.</summary>
    public static void Qr(Picture picture, string text, double x, double y, double size)
    {
        using QRCodeGenerator generator = new();
        using QRCodeData data = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);

        // The data carries four quiet modules on each side already.
        int count = data.ModuleMatrix.Count;

        // A module is a whole number of dots at 180 to the inch and its multiples.
        const double step = 25.4 / 180;
        double module = Math.Max(1, Math.Round(size / count / step)) * step;
        size = module * count;
        Outline dark = new();
        for (int row = 0; row < count; row++)
        {
            for (int column = 0; column < count; column++)
            {
                if (!data.ModuleMatrix[row][column])
                    continue;
                int from = column;
                while (column + 1 < count && data.ModuleMatrix[row][column + 1])
                    column++;
                dark.And(Outline.Rect(x + (from * module), y + (row * module), (column - from + 1) * module, module));
            }
        }

        picture.Fill(Outline.RoundRect(x, y, size, size, 1.6 * module), SKColors.White);
        picture.Fill(dark, Paint.Ink);
    }

    private static string Modules(string digits)
    {
        if (digits.Length != 13 || WithCheckDigit(digits[..12]) != digits)
            throw new ArgumentException(Invariant($"{digits}: wanted thirteen digits with the right check digit."), nameof(digits));
        string left = string.Concat(Enumerable.Range(0, 6).Select(i =>
        {
            string a = SetA[digits[i + 1] - '0'];
            return Choice[digits[0] - '0'][i] == 'A' ? a : new string([.. Turned(a).Reverse()]);
        }));
        string right = string.Concat(digits[7..].Select(d => Turned(SetA[d - '0'])));
        return "101" + left + "01010" + right + "101";
    }

    private static string Turned(string modules) => new([.. modules.Select(m => m == '0' ? '1' : '0')]);
}
