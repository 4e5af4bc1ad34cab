using StormClock.Service.Photos;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.Photos;

/// <summary>Files on the disk: found again, never under a name from outside, never too many.</summary>
public sealed class PhotoShelfTests : IDisposable
{
    private static readonly Photo Fig = new(new byte[] { 1, 2, 3, 4 }, 40, 30, new byte[] { 5, 6 });

    private readonly TempFolder folder = new();
    private readonly PhotoShelf shelf;

    public PhotoShelfTests() => shelf = new(folder.Path);

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Put_Photo_IsFoundWithItsThumbnailByAnotherShelfToo()
    {
        var name = Put("quay");

        Assert.Matches("^[0-9a-f]{32}$", name);
        Assert.Equal([$"{name}-small.jpg", $"{name}.jpg"], Files("quay"));
        Assert.Equal([1, 2, 3, 4], Bytes(new PhotoShelf(folder.Path).Find("quay", name)));
        Assert.Equal([5, 6], Bytes(new PhotoShelf(folder.Path).Find("quay", name, thumbnail: true)));
        Assert.Equal([name], shelf.Names("quay"));
    }

    [Fact]
    public void Put_Twice_HasTwoNames() => Assert.NotEqual(Put("quay"), Put("quay"));

    [Fact]
    public void Put_OnABoxOfMany_IsForItsOwnerOnly()
    {
        var name = Put("quay");

        if (OperatingSystem.IsWindows()) Assert.Skip("needs a system with file modes");
        else Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(folder.File($"photos/quay/{name}.jpg")));
    }

    [Fact]
    public void Find_OfAnotherGarden_IsNothing()
    {
        var name = Put("quay");
        Put("hollow");

        Assert.Null(shelf.Find("hollow", name));
        Assert.Null(shelf.Find("elsewhere", name));
    }

    [Fact]
    public void Remove_Photo_TakesBothFilesAndNoOthers()
    {
        var (name, other) = (Put("quay"), Put("quay"));

        shelf.Remove("quay", name);
        shelf.Remove("quay", name);
        shelf.Remove("elsewhere", name);

        Assert.Null(shelf.Find("quay", name));
        Assert.Null(shelf.Find("quay", name, thumbnail: true));
        Assert.Equal([other], shelf.Names("quay"));
        Assert.Equal(2, Files("quay").Length);
    }

    [Fact]
    public void Remove_WhileItIsSent_LetsTheReaderFinish()
    {
        var name = Put("quay");
        using var open = shelf.Find("quay", name)!;

        shelf.Remove("quay", name);

        Assert.Equal(4, open.Length);
        Assert.Equal(1, open.ReadByte());
    }

    /// <summary>By crashes and by two at once it may be asked for more than once.</summary>
    [Fact]
    public void SetAside_Photo_LiesInGoneAndIsNoPhotoAnyMore()
    {
        var (name, other) = (Put("quay"), Put("quay"));
        for (var time = 0; time < 2; time++) shelf.SetAside(Note(name, "item/fig-pots"));

        Assert.Null(shelf.Find("quay", name));
        Assert.Null(shelf.Find("quay", name, thumbnail: true));
        Assert.Equal([other], shelf.Names("quay"));
        Assert.Equal([1, 2, 3, 4], File.ReadAllBytes(folder.File($"photos/quay/gone/item-fig-pots-20270914-{name}.jpg")));
        Assert.Single(Directory.GetFiles(folder.File("photos/quay/gone")));
        shelf.Remove("quay", name);
        Assert.Single(Directory.GetFiles(folder.File("photos/quay/gone")));
    }

    /// <summary>Whatever stands in a note, the file stays in that one folder; a name that is none of ours moves nothing.</summary>
    [Theory]
    [InlineData("recheck/2027-09-20T11:00Z/../../x", "recheck-2027-09-20T11-00Z-------x")]
    [InlineData("", "")]
    [InlineData("item/é\n", "item---")]
    public void SetAside_OddSubject_IsNoPath(string subject, string told)
    {
        var name = Put("quay");
        shelf.SetAside(Note(name, subject));
        Assert.Equal([folder.File($"photos/quay/gone/{told}-20270914-{name}.jpg")], Directory.GetFiles(folder.File("photos"), "*", SearchOption.AllDirectories));
        shelf.SetAside(Note("../quay", subject));
        shelf.SetAside(Note(name, subject) with { GardenId = "../quay" });
        Assert.Single(Directory.GetFiles(folder.File("photos"), "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void SetAside_ManyBytes_CountForTheGarden()
    {
        Directory.CreateDirectory(folder.File("photos/quay/gone"));
        using (var large = File.Create(folder.File("photos/quay/gone/item-x.jpg"))) large.SetLength(PhotoLimits.BytesOfGarden);
        var put = shelf.Put("quay", Fig, Speeches.Us);
        Assert.Contains("'gone'", Assert.Single(put.Faults).Reason, StringComparison.Ordinal);
    }

    public static TheoryData<string> Tricks =>
    [
        "", ".", "..", "../photos/quay", "quay/../quay", "quay/", "/quay", "\\quay", "quay\\", "C:quay", "quay\0", "quay\n", "QUAY", "qu ay", "quay.", "-quay", "quay-", "~",
        "%2e%2e", "qüay", "/etc", new string('q', 61),
    ];

    [Theory, MemberData(nameof(Tricks))]
    public void Garden_ThatIsNoId_IsNoPath(string garden)
    {
        var name = Put("quay");

        Assert.Null(shelf.Find(garden, name));
        shelf.Remove(garden, name);
        Assert.Empty(shelf.Names(garden));
        Assert.Throws<ArgumentException>(() => shelf.Put(garden, Fig, Speeches.Us));
        Assert.Equal([1, 2, 3, 4], Bytes(shelf.Find("quay", name)));
        Assert.Equal([folder.File("photos/quay")], Directory.GetDirectories(folder.File("photos")));
    }

    [Fact]
    public void Name_ThatIsNotOfOurMaking_IsNoPath()
    {
        var name = Put("quay");
        File.WriteAllText(folder.File("secret.jpg"), "secret");
        File.WriteAllText(folder.File("photos/quay/secret.jpg"), "secret");

        string[] tricks =
        [
            "", ".", "..", "secret", "../secret", "../../secret", name + ".jpg", name + "-small", name + "\0", name + "\n", name.ToUpperInvariant() + "G", name[..31], name[..31] + "/",
            "/" + name[..31], "../quay/" + name, folder.File("secret"), name[..28] + "/../", "con", "nul", new('.', 32), new('F', 32), new('é', 32), new('٣', 32),
        ];
        Assert.All(tricks, trick =>
        {
            Assert.Null(shelf.Find("quay", trick));
            shelf.Remove("quay", trick);
        });
        Assert.Equal("secret", File.ReadAllText(folder.File("secret.jpg")));
        Assert.Equal("secret", File.ReadAllText(folder.File("photos/quay/secret.jpg")));
        Assert.NotEmpty(Bytes(shelf.Find("quay", name)));
    }

    /// <summary>A garden may be called so, and on Windows no folder may.</summary>
    [Theory]
    [InlineData("con")]
    [InlineData("nul")]
    [InlineData("aux")]
    [InlineData("com1")]
    [InlineData("lpt9")]
    public void Garden_NamedLikeADevice_HasAFolderOfAnotherName(string garden)
    {
        var name = Put(garden);

        Assert.NotEmpty(Bytes(shelf.Find(garden, name)));
        Assert.Equal([folder.File($"photos/{garden}-")], Directory.GetDirectories(folder.File("photos")));
    }

    [Fact]
    public void Put_OneMoreThanTheNumber_IsRefusedAndNothingIsChanged()
    {
        Directory.CreateDirectory(folder.File("photos/quay"));
        for (var i = 1; i < PhotoLimits.PhotosOfGarden; i++) File.WriteAllBytes(folder.File($"photos/quay/{i:x32}.jpg"), [1]);
        Put("quay");
        var before = Files("quay");

        var refused = shelf.Put("quay", Fig, Speeches.Us);

        Assert.Equal(Speeches.Us.For(PhotoRefusal.TooMany), Assert.Single(refused.Faults));
        Assert.Equal(before, Files("quay"));
        Put("hollow");
        shelf.Remove("quay", shelf.Names("quay")[0]);
        Put("quay");
    }

    [Fact]
    public void Put_OneByteMoreThanTheRoom_IsRefusedAndNothingIsChanged()
    {
        Directory.CreateDirectory(folder.File("photos/quay"));
        var large = folder.File($"photos/quay/{0:x32}.jpg");
        Grow(PhotoLimits.BytesOfGarden - 5);
        var before = Files("quay");

        var refused = shelf.Put("quay", Fig, Speeches.Us);

        Assert.Equal(Speeches.Us.For(PhotoRefusal.NoRoom), Assert.Single(refused.Faults));
        Assert.Equal(before, Files("quay"));
        Grow(PhotoLimits.BytesOfGarden - 6);
        Put("quay");

        // A file that takes no room on most disks.
        void Grow(long bytes)
        {
            using var file = new FileStream(large, FileMode.OpenOrCreate);
            file.SetLength(bytes);
        }
    }

    /// <summary>What a process leaves that dies between the two files, or in one of them.</summary>
    [Fact]
    public void Put_AfterACrash_ClearsWhatWasLeftHalf()
    {
        var name = Put("quay");
        var lost = new string('a', 32);
        File.WriteAllText(folder.File($"photos/quay/{lost}-small.jpg"), "thumbnail");
        File.WriteAllText(folder.File($"photos/quay/{lost}.jpg.part"), "half");
        Assert.Equal([name], shelf.Names("quay"));
        Assert.Null(shelf.Find("quay", lost));

        var second = Put("quay");

        Assert.Equal(new[] { name, second }.Order(StringComparer.Ordinal), shelf.Names("quay").Order(StringComparer.Ordinal));
        Assert.Equal(4, Files("quay").Length);
    }

    /// <summary>A folder in the place of the file that is to be written stands for any disk that will not take it.</summary>
    [Fact]
    public void Put_DiskRefuses_ThrowsAndKeepsNoPhoto()
    {
        File.WriteAllText(folder.File("photos"), "in the way");

        Assert.ThrowsAny<IOException>(() => shelf.Put("quay", Fig, Speeches.Us));
        Assert.Empty(shelf.Names("quay"));
    }

    private static PhotoNote Note(string name, string subject) => new(name, "quay", subject, name, Instant.FromUtc(2027, 9, 14, 15, 0), "ada", 40, 30);

    private string Put(string garden) => shelf.Put(garden, Fig, Speeches.Us).Value!;

    private string[] Files(string garden) => [.. Directory.GetFiles(folder.File($"photos/{garden}")).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    private static byte[] Bytes(Stream? stream)
    {
        using var found = stream!;
        using var copy = new MemoryStream();
        found.CopyTo(copy);
        return copy.ToArray();
    }
}
