using CsCheck;
using LiteDB;
using StormClock.Core.Garden;
using StormClock.Service.Delivery;
using StormClock.Service.Outbox;
using StormClock.Service.Photos;
using StormClock.Service.Store;
using StormClock.Service.Store.Mapping;

namespace StormClock.Service.Tests.Store;

/// <summary>Every kind comes back as it went in, through the bytes that stand in the file.</summary>
public class MappingTests
{
    private static readonly string[] Awkward = ["", " ", "\0", "null", "Ümläut", "größe|pipe", "🌀", "line\r\nline", "  trailing  "];

    /// <summary>Any text that has a UTF-8 form: half a surrogate pair has none, and no reader lets one in.</summary>
    private static readonly Gen<string> Text = Gen.OneOf(
        Gen.String.Select(text => string.Concat(text.EnumerateRunes().Select(rune => rune.ToString()))),
        Gen.Int[0, Awkward.Length - 1].Select(i => Awkward[i]));

    private static readonly Gen<string?> TextOrNull = Gen.OneOf(Text.Select(text => (string?)text), Gen.Const((string?)null));

    /// <summary>From the year 1 to 9999, to 100 ns.</summary>
    private static readonly Gen<Instant> Time =
        Gen.Long[-621_355_968_000_000_000, 2_534_023_007_999_999_999].Select(Instant.FromUnixTimeTicks);

    private static readonly Gen<Instant?> TimeOrNull = Gen.OneOf(Time.Select(time => (Instant?)time), Gen.Const((Instant?)null));

    private static readonly Gen<Outgoing> Message =
        from ids in Gen.Select(Text, Text, Text)
        from to in Gen.Select(Text, Text)
        from contents in Gen.Select(Text, Text, Text)
        from dated in Time
        select new Outgoing(ids.Item1, ids.Item2, ids.Item3, to.Item1, to.Item2, contents.Item1, contents.Item2, contents.Item3, dated);

    private static readonly Gen<OutboxEntry> Entry =
        from names in Gen.Select(Text, Text, Text, Text, Text, Text, Text)
        from jobs in Text.List[0, 4]
        from message in Message
        from times in Gen.Select(Time, Time, Time, Time, TimeOrNull)
        from state in Gen.Enum<OutboxState>()
        from rest in Gen.Select(Gen.Bool, Gen.Int, TextOrNull)
        select new OutboxEntry(
            names.Item1, names.Item2, names.Item3, names.Item4, names.Item5, names.Item6, names.Item7, jobs, message,
            times.Item1, times.Item2, times.Item3, rest.Item1, state, rest.Item2, times.Item4, times.Item5, rest.Item3);

    private static readonly Gen<JobState> State =
        Gen.Select(Text, Said, Said, Gen.Bool).Select((job, said, before, any) => said with { JobId = job, Before = any ? before with { JobId = job } : null });

    private static Gen<JobState> Said =>
        Gen.Select(Gen.Enum<JobProgress>(), Time, Text, Gen.Enum<CannotWhy>(), Gen.Bool).Select((progress, at, by, why, any) => new JobState("", progress, at, by, any ? why : null));

    [Fact]
    public void OutboxEntry_AnyValues_ComesBackEqual() => Entry.Sample(
        entry => Assert.Equal(entry, OutboxMapping.FromBson(ThroughBytes(OutboxMapping.ToBson(entry))), new EntryEquality()));

    [Fact]
    public void JobState_AnyValues_ComesBackEqual() => Gen.Select(Text, Text, State).Sample(
        (garden, episode, state) => Assert.Equal(state, JobStateMapping.FromBson(ThroughBytes(JobStateMapping.ToBson(garden, episode, state)))));

    [Fact]
    public void Advisory_AnyBytes_ComesBackEqual() => Gen.Select(Text, Gen.Byte.Array[0, 300], Text, Time, Time, Text).Sample(made =>
    {
        var heard = new HeardAdvisory(made.Item1, made.Item2, made.Item3, made.Item4, made.Item5, made.Item6);
        var back = AdvisoryMapping.FromBson(ThroughBytes(AdvisoryMapping.ToBson(heard)));
        Assert.Equal(heard.Raw, back.Raw);
        Assert.Equal(heard, back with { Raw = heard.Raw });
    });

    [Fact]
    public void Standing_AnyValues_ComesBackEqual() => Gen.Select(Text, Text, Gen.Long).Sample((garden, json, revision) =>
    {
        var standing = new StandingText(garden, json, revision);
        Assert.Equal(standing, StandingMapping.FromBson(ThroughBytes(StandingMapping.ToBson(standing))));
    });

    [Fact]
    public void Press_AnyValues_ComesBackEqual() => Gen.Select(Text, Text, Time, Text).Sample((token, answer, at, by) =>
    {
        var press = new Press(token, answer, at, by);
        Assert.Equal(press, PressMapping.FromBson(ThroughBytes(PressMapping.ToBson(press))));
    });

    [Fact]
    public void PhotoNote_AnyValues_ComesBackEqual() => Gen.Select(Text, Text, Text, Text, Time, Text, Gen.Select(Gen.Int, Gen.Int)).Sample((id, garden, subject, file, at, by, size) =>
    {
        var note = new PhotoNote(id, garden, subject, file, at, by, size.Item1, size.Item2);
        Assert.Equal(note, PhotoNoteMapping.FromBson(ThroughBytes(PhotoNoteMapping.ToBson(note))));
    });

    [Fact]
    public void Enum_NotNamed_IsRefusedAtTheDoor() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => OutboxMapping.ToBson(Entries.Make("x") with { State = (OutboxState)99 }));

    private static BsonDocument ThroughBytes(BsonDocument document) => BsonSerializer.Deserialize(BsonSerializer.Serialize(document));
}
