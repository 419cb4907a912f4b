using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;

namespace Laydown.Optics.Panels;

/// <summary>What one view adds up: room light that comes back and lamp light that comes through.</summary>
internal sealed class ViewLight
{
    /// <summary>A view.</summary>
    /// <param name="room">Weights of the room's light.</param>
    /// <param name="roomCdPerM2">Luminance of a perfect diffuser in it, cd/m².</param>
    /// <param name="lamp">Weights of the lamp.</param>
    /// <param name="lampCdPerM2">Luminance of the lit diffuser, cd/m².</param>
    internal ViewLight(SpectralWeights room, double roomCdPerM2, SpectralWeights lamp, double lampCdPerM2)
    {
        (Room, Lamp) = (Scaled(room, roomCdPerM2 / 100), Scaled(lamp, lampCdPerM2 / 100));
        (RoomWhite, LampWhite) = (room.White.Times(roomCdPerM2 / 100), lamp.White.Times(lampCdPerM2 / 100));
        (SeesRoom, SeesLamp) = (roomCdPerM2 > 0, lampCdPerM2 > 0);
    }

    /// <summary>X, Y, Z in cd/m² for one unit of reflectance, band by band.</summary>
    internal double[][] Room { get; }

    /// <summary>X, Y, Z in cd/m² for one unit of transmittance, band by band.</summary>
    internal double[][] Lamp { get; }

    /// <summary>A perfect diffuser in the room.</summary>
    internal Xyz RoomWhite { get; }

    /// <summary>The bare lamp.</summary>
    internal Xyz LampWhite { get; }

    internal bool SeesRoom { get; }

    internal bool SeesLamp { get; }

    private static double[][] Scaled(SpectralWeights weights, double scale)
    {
        double[][] axes = [weights.X.ToArray(), weights.Y.ToArray(), weights.Z.ToArray()];
        foreach (double[] axis in axes)
            for (int band = 0; band < axis.Length; band++)
                axis[band] *= scale;
        return axes;
    }
}
