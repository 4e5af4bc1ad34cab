namespace StormClock.Core.Plan;

/// <summary>One open job as the search sees it: everything by index and in slots.</summary>
internal sealed class ModelJob
{
    public required int Length { get; init; }

    /// <summary>Worth in the garden's money, hazard to others included.</summary>
    public required double Value { get; init; }

    public int Site { get; init; }

    public int Area { get; init; }

    /// <summary>Which windows and chances hold: one lane for each class of work at each site.</summary>
    public int Lane { get; init; }

    /// <summary>Teams that can do it, in the order of the book.</summary>
    public required int[] Teams { get; init; }

    /// <summary>Jobs that must end before it starts, and those that wait for it.</summary>
    public int[] Before { get; init; } = [];

    public int[] After { get; init; } = [];

    /// <summary>Earliest slot: what it needs is there.</summary>
    public int Supplied { get; init; }

    /// <summary>Earliest slot of the last round; never before <see cref="Supplied"/>.</summary>
    public int NotBefore
    {
        get => Math.Max(field, Supplied);
        set;
    }

    /// <summary>Store it fills, -1 when none.</summary>
    public int Store { get; init; } = -1;

    public double FloorM2 { get; init; }

    public double VolumeM3 { get; init; }

    /// <summary>Somebody asked for it to wait: nothing is gained by doing it soon.</summary>
    public bool Later { get; init; }

    /// <summary>Slot and team last told; -1 when it was not told.</summary>
    public int ToldSlot { get; init; } = -1;

    public int ToldTeam { get; init; } = -1;
}

/// <summary>The planning problem as arrays (science.md 8.1).</summary>
internal sealed class PlanModel
{
    public required int Slots { get; init; }

    public required IReadOnlyList<ModelJob> Jobs { get; init; }

    public required int People { get; init; }

    /// <summary>People of each team.</summary>
    public required int[][] Teams { get; init; }

    /// <summary>By team and lane; null where no job asks for it. Closed from the hard stop of the lane on.</summary>
    public required WindowTable?[][] Windows { get; init; }

    /// <summary>By lane: chance that work is still open at the end of so many slots.</summary>
    public required double[][] Chance { get; init; }

    /// <summary>By lane: the first slot in which nothing is planned any more.</summary>
    public required int[] Stop { get; init; }

    /// <summary>Slots from one site to another.</summary>
    public required int[][] Travel { get; init; }

    /// <summary>What is left in each store; infinite where the book does not say.</summary>
    public double[] FloorM2 { get; init; } = [];

    public double[] VolumeM3 { get; init; } = [];

    /// <summary>Jobs at the head of the order that keep their place, in order.</summary>
    public int[] Frozen { get; init; } = [];

    /// <summary>Set-up when the area changes within a site, slots (C; trade.md 4.2 has 5 minutes for a change of job).</summary>
    public int SetUp { get; init; } = 1;

    /// <summary>What an hour later costs, as a share of a job's value (C): enough to start soon, too little to change what is done.</summary>
    public double HourCost { get; init; } = 2e-4;

    /// <summary>What a change of area costs, as a share of the mean value (C): work is done area by area where it costs nothing else.</summary>
    public double AreaCost { get; init; } = 0.01;

    /// <summary>What a moved job costs, as a share of the mean value (science.md 8.4).</summary>
    public double MoveCost { get; init; } = 0.05;

    public bool Told => Jobs.Any(job => job.ToldSlot >= 0);

    public double MeanValue => Jobs.Count == 0 ? 0 : Jobs.Average(job => job.Value);

    /// <summary>Slots between two jobs of one person: the walk between sites, or the set-up of another area.</summary>
    public int Way(ModelJob from, ModelJob to) => Way(from.Site, from.Area, to);

    public int Way(int fromSite, int fromArea, ModelJob to)
    {
        if (fromArea == to.Area) return 0;
        return fromSite == to.Site ? SetUp : Travel[fromSite][to.Site];
    }

    /// <summary>Worth of a job that ends at a slot.</summary>
    public double Gain(ModelJob job, int end) => job.Value * (Chance[job.Lane][end] - (job.Later ? 0 : HourCost * end * PlanGrid.SlotMinutes / 60));
}
