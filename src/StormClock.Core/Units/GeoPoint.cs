namespace StormClock.Core.Units;

/// <summary>A place on the globe, decimal degrees: latitude north positive, longitude east positive, kept in (−180, 180].</summary>
public readonly record struct GeoPoint(double LatDeg, double LonDeg);
