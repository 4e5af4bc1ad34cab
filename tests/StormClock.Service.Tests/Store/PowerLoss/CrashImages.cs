namespace StormClock.Service.Tests.Store.PowerLoss;

/// <param name="Cut">How many operations had been asked of the disk when the power went.</param>
internal sealed record CrashImage(int Cut, byte[] Data, byte[] Log);

/// <summary>
/// What a power loss may leave: of each file everything up to its last sync, and of what came later any part, in units
/// of 4 or 8 KB each of which is kept or lost. That is all that a disk and a system promise, and harsher than most are.
/// </summary>
internal static class CrashImages
{
    private static readonly double[] ChancesToKeep = [0, 0.1, 0.5, 0.9, 1];

    /// <summary>So many images in order of their cuts, the cuts drawn from the whole recording.</summary>
    public static IEnumerable<CrashImage> Of(SimulatedDisk disk, int count, Random random)
    {
        var cuts = Enumerable.Range(0, count).Select(_ => random.Next(disk.Ops.Count + 1)).Order().ToList();
        MemoryStream[] durable = [SimulatedDisk.Filled(disk.Start[0]), SimulatedDisk.Filled(disk.Start[1])];
        List<DiskOp>[] pending = [[], []];
        var done = 0;
        foreach (var cut in cuts)
        {
            for (; done < cut; done++)
            {
                var op = disk.Ops[done];
                pending[op.File].Add(op);
                if (!op.IsSync) continue;
                foreach (var kept in pending[op.File]) SimulatedDisk.Apply(durable[op.File], kept);
                pending[op.File].Clear();
            }

            var unit = random.Next(2) == 0 ? 4096 : 8192;
            yield return new CrashImage(cut, Partly(durable[0], pending[0], unit, random), Partly(durable[1], pending[1], unit, random));
        }
    }

    private static byte[] Partly(MemoryStream durable, List<DiskOp> pending, int unit, Random random)
    {
        var keep = ChancesToKeep[random.Next(ChancesToKeep.Length)];
        var image = SimulatedDisk.Filled(durable.ToArray());
        foreach (var part in pending.SelectMany(op => Units(op, unit)).Where(_ => random.NextDouble() < keep)) SimulatedDisk.Apply(image, part);
        return image.ToArray();
    }

    private static IEnumerable<DiskOp> Units(DiskOp op, int unit)
    {
        if (op.Bytes is null) return [op];
        return op.Bytes.Chunk(unit).Select((bytes, i) => op with { Offset = op.Offset + ((long)i * unit), Bytes = bytes });
    }
}
