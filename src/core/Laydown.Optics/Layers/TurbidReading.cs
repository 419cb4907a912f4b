namespace Laydown.Optics.Layers;

/// <summary>K and S times thickness of a layer from what was measured: the formulas of Kubelka and Munk turned round
/// [Kubelka1948].</summary>
/// <remarks>
/// All readings are shares of diffuse light inside the layer: take surfaces off first with <see cref="Saunderson"/>. Readings that no layer
/// can give — more light out than in, a darker look over a lighter base — mean a K or S under 0 and are refused; rounding up to 1e-9 is
/// forgiven.
/// </remarks>
public static class TurbidReading
{
    private const double Rounding = 1e-9;

    /// <summary>From reflectance and transmittance of the free film.</summary>
    /// <remarks>
    /// a − 1 = ((1 − R)² − T²)/2R, b = √(a² − 1), S·X = arsinh(b·R/T)/b, K·X = (a − 1)·S·X; without absorption S·X = R/T, without
    /// scatter K·X = −ln T. Weak where hardly any light comes through.
    /// </remarks>
    /// <param name="reflectance">R, 0 to 1.</param>
    /// <param name="transmittance">T, over 0 to 1; with R at most 1.</param>
    /// <exception cref="ArgumentException">A reading lies outside its range, or K would be under 0.</exception>
    public static TurbidAmount OfFilm(double reflectance, double transmittance)
    {
        CheckShare(reflectance, 0, nameof(reflectance));
        CheckShare(transmittance, double.Epsilon, nameof(transmittance));
        double lost = 1 - reflectance - transmittance;
        if (lost < -Rounding)
            throw new ArgumentException(
                Invariant($"Film: R {reflectance} and T {transmittance} make K negative; wanted a sum of at most 1."), nameof(reflectance));
        if (reflectance == 0)
            return new(-Math.Log(transmittance), 0);

        // The product keeps a − 1, and with it K, exact where hardly anything is absorbed.
        double above = Math.Max(0, lost) * (1 - reflectance + transmittance) / (2 * reflectance);
        double b = Math.Sqrt(above * (above + 2));
        double scatter = b < 1e-8 ? reflectance / transmittance : Math.Asinh(b * reflectance / transmittance) / b;
        return new(above * scatter, scatter);
    }

    /// <summary>From reflectance over black and over a known lighter base, both in optical contact.</summary>
    /// <remarks>T² = (R − R0)(1 − R0·Rg)/Rg, then as <see cref="OfFilm"/>. Weak where the layer hides the base.</remarks>
    /// <param name="overBlack">R0, 0 to 1.</param>
    /// <param name="overBase">R, over R0 to 1.</param>
    /// <param name="baseReflectance">Rg, over 0 to 1.</param>
    /// <exception cref="ArgumentException">A reading lies outside its range, or K or S would be under 0.</exception>
    public static TurbidAmount OverBlackAndBase(double overBlack, double overBase, double baseReflectance) =>
        OverTwoBases(overBlack, 0, overBase, baseReflectance);

    /// <summary>From reflectance over a dark and a lighter base, both known and in optical contact: a black backing still sends a little
    /// back.</summary>
    /// <remarks>R0 = (Gd·R − Gl·Rd)/(Gd − Gl + Gd·Gl·(R − Rd)), with Rd over the dark base Gd and R over the lighter one Gl; the squares
    /// of R0 cancel.</remarks>
    /// <param name="overDark">Rd, 0 to 1.</param>
    /// <param name="dark">Gd, 0 to 1.</param>
    /// <param name="overLight">R, over Rd to 1.</param>
    /// <param name="light">Gl, over Gd to 1.</param>
    /// <exception cref="ArgumentException">A reading lies outside its range, the bases are equal, or K or S would be under 0.</exception>
    public static TurbidAmount OverTwoBases(double overDark, double dark, double overLight, double light)
    {
        CheckShare(overDark, 0, nameof(overDark));
        CheckShare(overLight, 0, nameof(overLight));
        CheckShare(dark, 0, nameof(dark));
        CheckShare(light, double.Epsilon, nameof(light));
        if (!(light > dark))
            throw new ArgumentException(Invariant($"Bases: found {dark} and {light}; wanted the second lighter."), nameof(light));
        if (!(overLight > overDark))
            throw new ArgumentException(
                Invariant($"Layer: {overLight} over base {light} and {overDark} over base {dark}; wanted a lighter look over the lighter base."),
                nameof(overLight));

        double free = ((dark * overLight) - (light * overDark)) / (dark - light + (dark * light * (overLight - overDark)));
        if (free < -Rounding)
            throw new ArgumentException(
                Invariant($"Layer: {overDark} over base {dark} makes S negative; wanted a lighter look."), nameof(overDark));
        double alone = Math.Max(0, free);
        double squared = (overLight - alone) * (1 - (alone * light)) / light;
        return OfFilm(alone, Math.Sqrt(Math.Min(squared, 1 + Rounding)));
    }

    private static void CheckShare(double value, double least, string name)
    {
        if (!(value >= least && value <= 1 + Rounding))
            throw new ArgumentException(Invariant($"{name}: found {value}; wanted {(least > 0 ? "over 0" : "0")} to 1."), name);
    }
}
