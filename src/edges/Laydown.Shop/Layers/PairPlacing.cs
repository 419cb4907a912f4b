namespace Laydown.Shop.Layers;

/// <summary>How a picture is laid on the finished piece.</summary>
public enum PairPlacing
{
    /// <summary>Cropped where its shape differs a little; refused where it differs by more than a factor of 2.</summary>
    Careful,

    /// <summary>Both ways by the same scale, so that all of it shows; what is left of the piece is white by day and dark at night.</summary>
    Fit,

    /// <summary>Both ways by the same scale, so that the piece is full; what hangs over is cut off evenly.</summary>
    Crop,

    /// <summary>Each way by its own scale.</summary>
    Stretch,
}
