namespace StormClock.Core.Plan;

/// <summary>Where a person has got to.</summary>
/// <param name="Slot">First free slot.</param>
/// <param name="Site">Site and area of the last job; -1 before the first.</param>
/// <param name="Told">Latest told slot among this person's jobs so far.</param>
internal record struct Cursor(int Slot, int Site, int Area, int Told);

/// <summary>An order of all jobs with the schedule that follows from it, and what stood after each place in it.</summary>
internal sealed class Line
{
    private readonly int people;
    private readonly int stores;

    public Line(PlanModel model)
    {
        (people, stores) = (model.People, model.FloorM2.Length);
        var count = model.Jobs.Count;
        Order = [.. Enumerable.Range(0, count)];
        Wish = Filled(count, -1);
        Start = Filled(count, -1);
        Team = Filled(count, -1);
        Cursors = new Cursor[(count + 1) * people];
        Array.Fill(Cursors, new(0, -1, -1, -1));
        FloorM2 = new double[(count + 1) * stores];
        VolumeM3 = new double[(count + 1) * stores];
        model.FloorM2.CopyTo(FloorM2, 0);
        model.VolumeM3.CopyTo(VolumeM3, 0);
        Scores = new double[count + 1];
        Open = new double[count + 1];
        Open[0] = model.Jobs.Sum(job => job.Value);
    }

    /// <summary>Job indices in the order in which they are given time.</summary>
    public int[] Order { get; }

    /// <summary>By job: the team wanted for it, -1 for the one that ends first.</summary>
    public int[] Wish { get; }

    /// <summary>By job: slot and team; -1 when it is left out.</summary>
    public int[] Start { get; }

    public int[] Team { get; }

    /// <summary>Score of the whole line.</summary>
    public double Score => Scores[^1];

    internal double[] Scores { get; }

    /// <summary>Value of the jobs not yet looked at.</summary>
    internal double[] Open { get; }

    internal Cursor[] Cursors { get; }

    internal double[] FloorM2 { get; }

    internal double[] VolumeM3 { get; }

    public Span<Cursor> CursorsAt(int place) => Cursors.AsSpan(place * people, people);

    public Span<double> FloorAt(int place) => FloorM2.AsSpan(place * stores, stores);

    public Span<double> VolumeAt(int place) => VolumeM3.AsSpan(place * stores, stores);

    /// <summary>Whether the job's things go into its store as it stands before a place.</summary>
    public bool HasRoom(ModelJob job, int place) =>
        job.FloorM2 <= FloorAt(place)[job.Store] + 1e-9 && job.VolumeM3 <= VolumeAt(place)[job.Store] + 1e-9;

    /// <summary>Whether they go in once the whole line is done.</summary>
    public bool HasRoom(ModelJob job) => HasRoom(job, Order.Length);

    /// <summary>Takes over the order, wishes, starts and teams of another line.</summary>
    public void CopyChoices(Line other)
    {
        other.Order.AsSpan().CopyTo(Order);
        other.Wish.AsSpan().CopyTo(Wish);
        other.Start.AsSpan().CopyTo(Start);
        other.Team.AsSpan().CopyTo(Team);
    }

    /// <summary>Takes over what stood before a place.</summary>
    public void CopyStand(Line other, int place)
    {
        other.CursorsAt(place).CopyTo(CursorsAt(place));
        other.FloorAt(place).CopyTo(FloorAt(place));
        other.VolumeAt(place).CopyTo(VolumeAt(place));
        (Scores[place], Open[place]) = (other.Scores[place], other.Open[place]);
    }

    /// <summary>Takes over what stood before each place up to and with this one.</summary>
    public void CopyStands(Line other, int place)
    {
        other.Cursors.AsSpan(0, (place + 1) * people).CopyTo(Cursors);
        other.FloorM2.AsSpan(0, (place + 1) * stores).CopyTo(FloorM2);
        other.VolumeM3.AsSpan(0, (place + 1) * stores).CopyTo(VolumeM3);
        other.Scores.AsSpan(0, place + 1).CopyTo(Scores);
        other.Open.AsSpan(0, place + 1).CopyTo(Open);
    }

    private static int[] Filled(int count, int value)
    {
        var array = new int[count];
        Array.Fill(array, value);
        return array;
    }
}
