using StormClock.Service.Tests.Books;
using StormClock.Service.Tests.Practice;
using StormClock.Service.Tests.Store;

namespace StormClock.Service.Tests.EndToEnd;

/// <summary>A folder with everything that a command can be given by mistake.</summary>
public sealed class BadFiles : IDisposable
{
    private readonly TempFolder folder = new();
    private readonly FileStream held;

    public BadFiles()
    {
        var practice = System.IO.Path.Combine(ConfigFiles.Folder, "practice");
        var garden = File.ReadAllText(System.IO.Path.Combine(practice, "garden-tern-hook.yaml"));
        var advisory = File.ReadAllText(System.IO.Path.Combine(practice, "storm", "010.txt"));
        var noise = new byte[5000];
        new Random(4).NextBytes(noise);

        Write("good.yaml", garden);
        Write("good.txt", advisory);
        Write("good.csv", "name,lat,lon\nHome,30.1,-84.2\n");
        Write("alert.xml", File.ReadAllText(System.IO.Path.Combine(practice, "storm", "alert-1-watch.xml")));
        Write("page.txt", "<!DOCTYPE html>\n<html><body>not found</body></html>\n");
        Write("page.yaml", "<!DOCTYPE html>\n<html><body>not found</body></html>\n");
        Write("broken.yaml", "garden: [\n  a: b: c\n");
        Write("units.yaml", garden.Replace("units: us", "units: furlongs"));
        Write("mass.yaml", garden.Replace("mass: 7 lb", "mass: 7 bushels"));
        Write("cut.txt", advisory[..(advisory.IndexOf("MAX SUSTAINED", StringComparison.Ordinal) + 20)]);
        Write("empty.csv", "");
        Write("lines.csv", "name,lat,lon\nHome,30.1,-84.2\nPole,91,0\nNowhere\nFar,10,east\n");
        Write("done.txt", "no-such/tie,done,2027-09-20T10:00Z\nfern-baskets/take_down\nfern-baskets/take_down,dune,2027-09-20T10:00Z\nfern-baskets/take_down,2,2027-09-20T10:00Z\nfern-baskets/take_down,done,yesterday\n");
        foreach (var name in new[] { "noise.txt", "noise.yaml", "noise.csv" }) File.WriteAllBytes(Path(name), noise);
        Directory.CreateDirectory(Path("empty"));
        Installation("installation", "", SampleBook.Good);
        Installation("misspelt", "polll_minutes: 3\n", SampleBook.Good);
        Installation("no-password", "mail: {host: 127.0.0.1, port: 9, security: starttls, user: g, password_env: STORMCLOCK_TEST_UNSET, from: g@example.org}\n", SampleBook.Good);
        Installation("no-server", "mail: {host: 127.0.0.1, port: 9, security: starttls, from: g@example.org}\n", SampleBook.Good);
        Installation("noise-settings", "", SampleBook.Good);
        File.WriteAllBytes(Path("noise-settings/stormclock.yaml"), noise);
        Directory.CreateDirectory(Path("folder-settings/stormclock.yaml"));

        // Held shut: what a file without permission is to everybody but the superuser.
        Write("held.txt", advisory);
        held = new FileStream(Path("held.txt"), FileMode.Open, FileAccess.ReadWrite, FileShare.None);
    }

    public string Folder => folder.Path;

    public string Path(string name) => folder.File(name);

    /// <summary>A well-formed beginning and then a hundred million characters.</summary>
    public string Huge(string name)
    {
        using var file = new StreamWriter(Path(name));
        file.Write("<?xml version=\"1.0\"?>\n<alert xmlns=\"urn:oasis:names:tc:emergency:cap:1.2\">\n");
        var line = string.Concat(Enumerable.Repeat("<info><event>wind</event></info> ", 3000));
        for (var i = 0; i < 1000; i++) file.WriteLine(line);
        return Path(name);
    }

    public void Dispose()
    {
        held.Dispose();
        folder.Dispose();
    }

    private void Installation(string name, string settings, string garden)
    {
        Directory.CreateDirectory(Path($"{name}/gardens"));
        Write($"{name}/stormclock.yaml", settings);
        Write($"{name}/gardens/quay.yaml", garden);
    }

    private void Write(string name, string text) => File.WriteAllText(Path(name), text);
}
