using System.Text;
using CsCheck;
using StormClock.Core.Advisories;
using StormClock.Core.Formats.Notes;

namespace StormClock.Core.Tests.Formats;

public class NoteReaderTests
{
    private static readonly Instant Made = Instant.FromUtc(2027, 9, 21, 12, 0);

    public static TheoryData<Note> Notes =>
    [
        new WindNote("plot", "Ada", Made, Made + Duration.FromHours(6), 27.5, Made + Duration.FromHours(20)),
        new WindNote("plot", "Ada", Made, Made + Duration.FromHours(6), 27.5, null),
        new RainNote("plot", "Ada", Made, Made, 150, 40),
        new RainNote("plot", "Ada", Made, Made, 0.4, null),
        new WaterNote("plot", "Ada", Made, -0.6, "NAVD88"),
        new LeaveByNote("plot", "Ada", Made, Made + Duration.FromHours(9)),
        new AllClearNote("plot", "Ada", Made),
        new LeaveByNote("plot", "Ada", Made, Made + Duration.FromHours(9)) { Replaces = true },
        new WindNote("plot", "Ada", Made, Made, 30, null) { Expires = Made + Duration.FromHours(30), Replaces = true },
    ];

    [Theory, MemberData(nameof(Notes))]
    public void Read_WrittenNote_IsTheSame(Note note) => Assert.Equal(note, NoteReader.Read(NoteReader.Write(note)).Value);

    [Theory]
    [InlineData("""{"note":"rain","garden":"plot","by":"Ada","made":"2027-09-21T12:00:00Z","from":"2027-09-21T12:00:00Z","dayMm":2001}""", "dayMm")]
    [InlineData("""{"note":"rain","garden":"plot","by":"Ada","made":"2027-09-21T12:00:00Z","from":"2027-09-21T12:00:00Z","dayMm":-1}""", "dayMm")]
    [InlineData("""{"note":"rain","garden":"plot","by":"Ada","made":"2027-09-21T12:00:00Z","from":"2027-09-21T12:00:00Z","dayMm":90,"hourMm":"much"}""", "hourMm")]
    [InlineData("""{"note":"water","garden":"plot","by":"Ada","made":"2027-09-21T12:00:00Z","levelM":2}""", "datum")]
    [InlineData("""{"note":"water","garden":"plot","by":"Ada","made":"2027-09-21T12:00:00Z","levelM":31,"datum":"AHD"}""", "levelM")]
    [InlineData("""{"note":"snow","garden":"plot","by":"Ada","made":"2027-09-21T12:00:00Z"}""", "note")]
    public void Read_NoteWithAMistake_NamesTheKey(string json, string key)
    {
        var read = NoteReader.Read(Encoding.UTF8.GetBytes(json));
        Assert.Equal(key, Assert.Single(read.Faults).Where);
    }

    [Fact]
    public void Read_AnyBytes_NeverThrows() => Gen.Byte.Array[0, 200].Sample(bytes => NoteReader.Read(bytes), iter: 2000);
}
