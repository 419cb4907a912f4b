namespace Laydown.Bench;

/// <summary>Pictures for the raster bench, made from a fixed seed: discs over discs with gradients and grain (near the spectrum of a photograph), noise, flat art, masks.</summary>
/// <param name="Width">Pixels across.</param>
/// <param name="Height">Pixels down.</param>
/// <param name="Given">A picture that stands in for the natural one, RGB, pixel after pixel; null for the bench's own.</param>
internal sealed record RasterPictures(int Width, int Height, byte[]? Given = null)
{
    private const int Most = 1500;

    /// <summary>RGB, pixel after pixel, 8 bits: discs over discs whose radii follow a power law.</summary>
    public byte[] Natural(int seed = 1)
    {
        if (Given is not null)
            return Given;
        Random chance = new(seed);
        byte[] picture = new byte[Width * Height * 3];
        for (int i = 0; i < Most; i++)
            Disc(picture, chance, i);
        for (int i = 0; i < picture.Length; i++)
            picture[i] = (byte)Math.Clamp(picture[i] + chance.Next(-4, 5), 0, 255);
        return picture;
    }

    /// <summary>RGB, 8 bits, every value by chance.</summary>
    public byte[] Noise(int seed = 2)
    {
        byte[] picture = new byte[Width * Height * 3];
        new Random(seed).NextBytes(picture);
        return picture;
    }

    /// <summary>A mask, 0 or 255, about two thirds full: discs taken out of a full sheet, some filled again.</summary>
    public byte[] Mask(int seed = 3)
    {
        Random chance = new(seed);
        byte[] mask = new byte[Width * Height];
        Array.Fill(mask, (byte)255);
        for (int i = 0; i < 4000; i++)
        {
            double radius = Math.Min(Width, Height) / 8.0 / Math.Pow(1 + (i / 4.0), 0.6);
            (double cx, double cy) = (chance.NextDouble() * Width, chance.NextDouble() * Height);
            byte value = (byte)(i % 3 == 0 ? 0 : 255);
            Each(cx, cy, radius, at => mask[at] = value);
        }

        return mask;
    }

    private void Disc(byte[] picture, Random chance, int number)
    {
        // Large ones first, so that small ones lie on top.
        double radius = Math.Min(Width, Height) / 1.5 / Math.Pow(1 + number, 0.55);
        (double cx, double cy) = (chance.NextDouble() * Width, chance.NextDouble() * Height);
        (int r, int g, int b) = (chance.Next(256), chance.Next(256), chance.Next(256));
        double slope = (chance.NextDouble() - 0.5) * 120 / radius;
        Each(cx, cy, radius, at =>
        {
            int lift = (int)(slope * ((at % Width) - cx));
            picture[at * 3] = (byte)Math.Clamp(r + lift, 0, 255);
            picture[(at * 3) + 1] = (byte)Math.Clamp(g + lift, 0, 255);
            picture[(at * 3) + 2] = (byte)Math.Clamp(b + lift, 0, 255);
        });
    }

    private void Each(double cx, double cy, double radius, Action<int> paint)
    {
        for (int y = Math.Max(0, (int)(cy - radius)); y < Math.Min(Height, cy + radius); y++)
        {
            double half = Math.Sqrt(Math.Max(0, (radius * radius) - ((y - cy) * (y - cy))));
            for (int x = Math.Max(0, (int)(cx - half)); x < Math.Min(Width, cx + half); x++)
                paint((y * Width) + x);
        }
    }
}
