using BenchmarkDotNet.Attributes;
using StormClock.Core.Garden;
using StormClock.Core.Loads;

namespace StormClock.Benchmarks;

/// <summary>A thousand invented things of every shape: how they stand, and what one job does to each.</summary>
public class LoadBenchmarks
{
    private static readonly MaterialNeed[] Materials = [new("concrete block", 40, "each"), new("ratchet strap", 20, "each"), new("ground anchor", 20, "each")];
    private static readonly JobKind[] Jobs = [JobKind.WeighDown, JobKind.LayFlat, JobKind.Tie, JobKind.Strap, JobKind.Fill, JobKind.Prune, JobKind.CoverOff, JobKind.Bundle];

    private static readonly (ItemShape Shape, ItemBuild Build)[] Things = [.. Enumerable.Range(0, 1000).Select(Thing)];

    [Benchmark]
    public double Strengths()
    {
        var sum = 0.0;
        foreach (var (shape, build) in Things) sum += ItemLoads.Of(shape, build, Soil.Saturated)?.First.GustMps ?? 0;
        return sum;
    }

    /// <summary>The strength before, the job, and the strength after.</summary>
    [Benchmark]
    public double StrengthsAndJobs()
    {
        var sum = 0.0;
        for (var i = 0; i < Things.Length; i++)
        {
            var (shape, build) = Things[i];
            var done = JobEffect.After(shape, build, Jobs[i % Jobs.Length], Materials, 10);
            sum += (ItemLoads.Of(shape, build, Soil.Saturated)?.First.GustMps ?? 0) + (ItemLoads.Of(done.Shape, done.Build, Soil.Saturated)?.First.GustMps ?? 0);
        }

        return sum;
    }

    /// <summary>Three outcomes for one thing.</summary>
    [Benchmark]
    public StrengthBelief Learning() => StrengthBelief.Before(25).After([new(22, true, true), new(24, true, false), new(30, false, true)]);

    private static (ItemShape, ItemBuild) Thing(int i)
    {
        var size = 0.4 + i % 17 * 0.1;
        var shape = (ItemShape)(i / 8 % 8);
        return (shape, new()
        {
            HeightM = 1.3 * size, WidthM = size, DepthM = 0.8 * size, BaseM = 0.6 * size, MassKg = 5 + i % 29 * 3, PotHeightM = i % 3 == 0 ? 0.3 * size : null,
            HoldsL = 100 * size, Filled = i % 5 * 0.2, StemM = 0.05 * size, CrownDepthM = size, Solidity = 0.5, ClimberCover = 0.3,
            Standing = i % 2 == 0 ? Standing.Free : Standing.OnPosts, PostM = 0.08, PostDeepM = 0.5, Surface = (Surface)(i % 7),
            HeldToMps = shape is ItemShape.Stems or ItemShape.Cover or ItemShape.Fixed || i % 11 == 0 ? 16 : null,
        });
    }
}
