using StormClock.Core.Garden;

namespace StormClock.Core.Worth;

/// <summary>What one job is worth if the storm comes.</summary>
/// <param name="LossAvoidedUsd">Expected loss of the gardener's own without the job less that with it, in her money.</param>
/// <param name="HazardAvoidedUsd">The same for what the thing may do to others, weighted (science.md 8.1, C).</param>
/// <param name="WhyLeave">Why the job is better left; null when it is worth doing.</param>
public sealed record JobWorth(Job Job, double LossAvoidedUsd, double HazardAvoidedUsd, LeftReason? WhyLeave);
