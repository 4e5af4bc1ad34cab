namespace StormClock.Core.Hazards;

/// <summary>
/// Unit normal numbers, made once from a fixed seed and used for every advisory, place and threshold: the same input gives the
/// same output, and sampling noise cancels between successive advisories. xoshiro256** (Blackman and Vigna) with Box–Muller.
/// </summary>
public sealed class Draws
{
    /// <summary>One for the track multiplier, and one for each error quantity at each lead.</summary>
    public static readonly int PerMember = 1 + ErrorStatistics.Quantities * ErrorStatistics.LeadHours.Count;

    /// <summary>Sampling error of a chance p is √(p(1−p)/N): half a percentage point at most.</summary>
    public const int DefaultMembers = 10_000;

    private const ulong Seed = 0x53746F726D436C6B;
    private static readonly Lazy<Draws> LazyDefault = new(() => new(Normals(DefaultMembers * PerMember)));
    private readonly float[] values;

    /// <param name="values">Member after member, <see cref="PerMember"/> each: the numbers of one member lie together.</param>
    public Draws(float[] values)
    {
        if (values.Length == 0 || values.Length % PerMember != 0)
            throw new ArgumentException($"Needs {PerMember} numbers for each member.", nameof(values));
        this.values = values;
    }

    public static Draws Default => LazyDefault.Value;

    /// <summary>One member without any error: the forecast as written.</summary>
    public static Draws Still { get; } = new(new float[PerMember]);

    public int Members => values.Length / PerMember;

    public ReadOnlySpan<float> Of(int member) => values.AsSpan(member * PerMember, PerMember);

    private static float[] Normals(int count)
    {
        var random = new Xoshiro(Seed);
        var normals = new float[count];
        for (var i = 0; i < count; i += 2)
        {
            var radius = Math.Sqrt(-2 * Math.Log(1 - random.NextShare()));
            var (sin, cos) = Math.SinCos(2 * Math.PI * random.NextShare());
            normals[i] = (float)(radius * cos);
            if (i + 1 < count) normals[i + 1] = (float)(radius * sin);
        }

        return normals;
    }

    private sealed class Xoshiro
    {
        private ulong s0, s1, s2, s3;

        public Xoshiro(ulong seed) => (s0, s1, s2, s3) = (Mix(ref seed), Mix(ref seed), Mix(ref seed), Mix(ref seed));

        /// <summary>Uniform in [0, 1).</summary>
        public double NextShare()
        {
            var result = ulong.RotateLeft(s1 * 5, 7) * 9;
            var shifted = s1 << 17;
            s2 ^= s0;
            s3 ^= s1;
            s1 ^= s2;
            s0 ^= s3;
            s2 ^= shifted;
            s3 = ulong.RotateLeft(s3, 45);
            return (result >> 11) * (1.0 / (1UL << 53));
        }

        /// <summary>SplitMix64, the usual way to fill the state from one number.</summary>
        private static ulong Mix(ref ulong state)
        {
            var z = state += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }
}
