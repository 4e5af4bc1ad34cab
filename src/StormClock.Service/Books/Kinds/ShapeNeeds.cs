using StormClock.Core.Garden;

namespace StormClock.Service.Books.Kinds;

/// <summary>What the formula of a shape cannot do without (science.md 5).</summary>
internal static class ShapeNeeds
{
    /// <summary>The keys that are missing from a typical build of this shape; alternatives are joined by "or".</summary>
    public static IEnumerable<string> Missing(ItemShape shape, ItemBuild build) =>
        Of(shape, build).Where(need => !need.Has).Select(need => need.Key);

    private static IEnumerable<(string Key, bool Has)> Of(ItemShape shape, ItemBuild build)
    {
        (string, bool) height = ("height_m", build.HeightM is > 0), width = ("width_m", build.WidthM is > 0), mass = ("mass_kg", build.MassKg is > 0);
        (string, bool) drag = ("drag", build.Drag is > 0), heldTo = ("held_to_mps", build.HeldToMps is > 0);
        var foot = build.BaseM is > 0 && build.MassKg is > 0;
        var posts = build is { Posts: > 0, PostM: > 0, PostDeepM: > 0 };
        return shape switch
        {
            ItemShape.Body => [height, width, mass, drag, ("base_m", build.BaseM is > 0), ("surface or friction", build.Surface is not null || build.Friction is > 0)],
            ItemShape.Panel => [height, width, ("solidity", build.Solidity is > 0), ("posts, post_m and post_deep_m or base_m and mass_kg", posts || foot)],
            ItemShape.Sheet => [width, mass, ("depth_m or height_m", build.DepthM is > 0 || build.HeightM is > 0)],
            ItemShape.Hung => [height, width, mass, drag],
            ItemShape.Tree => [height, width, ("crown_depth_m", build.CrownDepthM is > 0), ("stem_m", build.StemM is > 0)],
            ItemShape.Stems or ItemShape.Cover => [heldTo],
            _ => [],
        };
    }
}
