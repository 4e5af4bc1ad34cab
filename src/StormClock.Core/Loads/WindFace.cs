namespace StormClock.Core.Loads;

/// <summary>A part of a thing that faces the wind.</summary>
/// <param name="AreaM2">Of its outline.</param>
/// <param name="CentreHeightM">Above the foot of the thing.</param>
/// <param name="Drag">Force coefficient on that area.</param>
public readonly record struct WindFace(double AreaM2, double CentreHeightM, double Drag)
{
    /// <summary>m²; force over velocity pressure.</summary>
    public double DragAreaM2 => Drag * AreaM2;

    /// <summary>m³; moment about the foot over velocity pressure.</summary>
    public double DragMomentM3 => DragAreaM2 * CentreHeightM;
}
