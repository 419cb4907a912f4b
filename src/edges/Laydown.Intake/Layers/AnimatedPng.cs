using System.Buffers.Binary;

namespace Laydown.Intake.Layers;

/// <summary>Tells whether a PNG is animated: its control chunk stands before the picture's data.</summary>
internal static class AnimatedPng
{
    private const int MarkBytes = 8, MostChunks = 1000;

    /// <summary>Number of frames, or null where the file is a plain picture.</summary>
    public static int? Frames(string path)
    {
        using FileStream stream = File.OpenRead(path);
        stream.Position = MarkBytes;
        Span<byte> head = stackalloc byte[12];
        for (int chunk = 0; chunk < MostChunks && stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) == head.Length; chunk++)
        {
            uint length = BinaryPrimitives.ReadUInt32BigEndian(head);
            if (head.Slice(4, 4).SequenceEqual("acTL"u8))
                return (int)Math.Min(int.MaxValue, BinaryPrimitives.ReadUInt32BigEndian(head[8..]));
            if (head.Slice(4, 4).SequenceEqual("IDAT"u8))
                return null;

            // Four of the bytes read belong to the chunk's data or check.
            stream.Position += length;
        }

        return null;
    }
}
