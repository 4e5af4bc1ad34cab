using System.CommandLine;
using System.Globalization;
using System.IO.Compression;
using StormClock.Core;
using StormClock.Service.Commands.Restoring;
using StormClock.Service.Settings;
using StormClock.Service.Store;

namespace StormClock.Service.Commands;

/// <summary><c>restore</c>: puts a backup of the keeper's page in place of what a box has, which is kept beside it.</summary>
internal static class RestoreCommand
{
    public static Command Make()
    {
        var zip = new Argument<string>("zip") { Description = "A backup taken on the keeper's page." };
        var config = new Option<string?>("--config") { Description = "Folder that the installation's files go to. Default: config/ here." };
        var data = new Option<string?>("--data") { Description = "Folder that the data goes to, in place of the one in the backup's settings." };
        var command = new Command("restore", "Put a backup in place of what is here. The service must be stopped; what was there is kept beside it.") { zip, config, data };
        command.SetAction(parsed => Run(parsed.GetValue(zip)!, parsed.GetValue(config) ?? "config", parsed.GetValue(data)));
        return command;
    }

    private static int Run(string zip, string config, string? data)
    {
        var inputs = new Inputs();
        inputs.WritableFolder(config, "--config");
        inputs.WritableFolder(data, "--data");
        if (!File.Exists(zip)) inputs.Fault($"{zip}: there is no such file");
        if (inputs.Report()) return ExitCode.BadInput;

        try
        {
            using var archive = ZipFile.OpenRead(zip);
            foreach (var fault in ArchiveEntries.Faults(archive)) inputs.Fault($"{zip}: {fault}");
            return inputs.Report() ? Untouched() : Restore(archive, zip, config, data, inputs);
        }
        catch (InvalidDataException)
        {
            inputs.Fault($"{zip}: is no archive that can be read (zip), or only a part of one");
            inputs.Report();
            return Untouched();
        }
        catch (Exception trouble) when (ExitCode.IsOutsideTrouble(trouble))
        {
            Console.Error.WriteLine(trouble.Message);
            return ExitCode.OutsideTrouble;
        }
    }

    private static int Untouched()
    {
        Console.Error.WriteLine("Nothing was changed.");
        return ExitCode.BadInput;
    }

    private static int Restore(ZipArchive archive, string zip, string config, string? data, Inputs inputs)
    {
        var stamp = Instant.FromDateTimeOffset(TimeProvider.System.GetUtcNow()).ToString("uuuuMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        var hasConfig = archive.Entries.Any(entry => entry.FullName.StartsWith(ArchiveEntries.Config, StringComparison.Ordinal));
        var (configSwap, dataSwap) = (FolderSwap.At(config, stamp), (FolderSwap?)null);
        try
        {
            // The settings come first: they may say where the data goes.
            if (hasConfig && ArchiveFiles.Unpack(archive, ArchiveEntries.Config, configSwap.Fresh, secret: false) is { } spoilt) return Refuse(inputs, [$"{zip}: {spoilt}"]);
            if ((data ?? DataFolder(hasConfig ? configSwap.Fresh : config)) is not { } place) return Refuse(inputs, ["--data: the settings do not say where the data goes; name the folder"]);
            dataSwap = FolderSwap.At(place, stamp);
            if (FolderSwap.AreNested(configSwap, dataSwap)) return Refuse(inputs, [$"--data: {dataSwap.Place} and {configSwap.Place} lie within each other; name two folders that do not"]);

            // From here on until all is done no service can take the folder, neither as it was nor as it will be.
            using var held = dataSwap.KeepsOld ? StoreLock.Take(dataSwap.Place) : null;
            if (ArchiveFiles.Unpack(archive, ArchiveEntries.Data, dataSwap.Fresh, secret: true) is { } damaged) return Refuse(inputs, [$"{zip}: {damaged}"]);
            var read = RestoredFiles.Read(dataSwap.Fresh, hasConfig ? configSwap.Fresh : null);
            if (read.Value is not { } files) return Refuse(inputs, [.. read.Faults.Select(fault => $"{zip}: {fault.Reason}")]);

            using var fresh = StoreLock.Take(dataSwap.Fresh);
            var carried = CarryPassword(dataSwap);
            foreach (var folder in dataSwap.LeftOver().Concat(configSwap.LeftOver())) Console.WriteLine($"A restore was broken off here before. {folder} holds nothing but what was in its archive; take it away.");
            FolderSwap[] swaps = hasConfig ? [configSwap, dataSwap] : [dataSwap];
            var kept = swaps.Where(swap => swap.KeepsOld).Select(swap => swap.Old).ToList();
            FolderSwap.Do(swaps);
            Tell(zip, files, swaps, kept, carried);
            return ExitCode.Good;
        }
        finally
        {
            Forget(configSwap.Fresh);
            if (dataSwap is not null) Forget(dataSwap.Fresh);
        }
    }

    private static int Refuse(Inputs inputs, IEnumerable<string> faults)
    {
        foreach (var fault in faults) inputs.Fault(fault);
        inputs.Report();
        return Untouched();
    }

    /// <summary>Null where the settings cannot be read.</summary>
    private static string? DataFolder(string config) => SettingsFile.Load(Installation.SettingsFileIn(config)).Value?.DataFolder;

    /// <summary>The password stays where the box has it: a backup is often kept where it does not belong.</summary>
    private static bool CarryPassword(FolderSwap data)
    {
        var own = Path.Combine(data.Place, MailSection.PasswordFile);
        if (!File.Exists(own)) return false;
        SecretFile.Write(Path.Combine(data.Fresh, MailSection.PasswordFile), File.ReadAllBytes(own));
        return true;
    }

    private static void Tell(string zip, RestoredFiles files, FolderSwap[] swaps, IReadOnlyList<string> kept, bool carried)
    {
        foreach (var swap in swaps) Console.WriteLine($"restored: {swap.Place}");
        foreach (var folder in kept) Console.WriteLine($"what was there is kept: {folder}");
        if (files.Settings is not null && !File.Exists(Installation.SettingsFileIn(swaps[0].Place))) Console.WriteLine("The backup holds no settings (stormclock.yaml): the defaults hold, and no mail server is set.");
        if (carried) Console.WriteLine($"The mail password ({MailSection.PasswordFile}) of this box was carried over; {zip} holds none.");
        else if (files.Settings?.Mail?.PasswordFile is { } password && !File.Exists(password)) Console.WriteLine($"The mail password is not in the backup: put it into {password}.");
        Console.WriteLine($"gardens: {(files.Settings is null ? "none in this backup; those of the config folder stay" : files.Books.Count == 0 ? "none" : string.Join(", ", files.Books.Select(book => book.Name)))}; letters known: {files.Letters}");
        Console.WriteLine("Messages sent since the backup, and still of use, go out again; answers given since must be given again. Give the folders to the user that StormClock runs as, run check, then start the service.");
    }

    /// <summary>What was unpacked and not used.</summary>
    private static void Forget(string folder)
    {
        if (Directory.Exists(folder)) Directory.Delete(folder, recursive: true);
    }
}
