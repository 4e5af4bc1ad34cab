using StormClock.Core;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Delivery.Push;
using StormClock.Service.Outbox;
using StormClock.Service.Settings;
using StormClock.Service.Store;
using StormClock.Service.Web;

namespace StormClock.Service.Commands.Restoring;

/// <summary>An unpacked backup, read as the service would read it.</summary>
/// <param name="Books">Of the gardens; empty where the backup holds no config folder.</param>
/// <param name="Settings">Null where it holds none.</param>
/// <param name="Letters">How many the database knows of, in those gardens.</param>
internal sealed record RestoredFiles(IReadOnlyList<GardenBook> Books, StormSettings? Settings, int Letters)
{
    /// <summary>The faults name files as they stand in the archive.</summary>
    /// <param name="config">Null where the backup holds none.</param>
    public static ReadResult<RestoredFiles> Read(string data, string? config)
    {
        var gardens = config is null ? [] : GardenFiles.Load(Installation.GardensIn(config));
        var faults = gardens.SelectMany(garden => Named(garden.Read.Faults, $"config/gardens/{Path.GetFileName(garden.File)}")).ToList();
        var settings = config is null ? null : SettingsFile.Load(Installation.SettingsFileIn(config));
        faults.AddRange(Named(settings?.Faults ?? [], "config/stormclock.yaml"));
        if (Path.Combine(data, AckKeyFile.Name) is var links && File.Exists(links)) faults.AddRange(Named(AckKeyFile.ReadOrMake(links).Faults, $"data/{AckKeyFile.Name}"));
        if (Path.Combine(data, VapidKeyFile.Name) is var push && File.Exists(push)) faults.AddRange(Named(VapidKeyFile.ReadOrMake(push).Faults, $"data/{VapidKeyFile.Name}"));

        IReadOnlyList<GardenBook> books = [.. gardens.Select(garden => garden.Read.Value).OfType<GardenBook>()];
        return OpenStore(data, books, out var letters) is { } trouble
            ? ReadResult.Bad<RestoredFiles>([.. faults, new ReadFault(StoreFile.DataName, $"data/{StoreFile.DataName}: {trouble}")])
            : faults.Count > 0 ? ReadResult.Bad<RestoredFiles>(faults) : new RestoredFiles(books, settings?.Value, letters);
    }

    /// <summary>
    /// Null when the database can be used, and each of its entries read. A spoilt file can make its engine fail in any way, or begin an empty one in its
    /// place; none of that is a fault of this program. Only that the disk is at its end is told as what it is.
    /// </summary>
    private static string? OpenStore(string data, IReadOnlyList<GardenBook> books, out int letters)
    {
        letters = 0;
        try
        {
            using var store = StormStore.Open(data);
            if (!store.Read(Meta.HasInstallationId)) return "is no database that StormClock has run on";
            store.Read(reader => reader.ReadAll());
            letters = store.Read(reader => books.Sum(book => OutboxTable.OfGarden(reader, book.Id).Count));
            return null;
        }
        catch (StoreTooNewException newer)
        {
            return newer.Message;
        }
        catch (Exception trouble) when (!IsDisk(trouble) && !IsDisk((trouble as StoreUnavailableException)?.InnerException))
        {
            return $"is spoilt, or no database of StormClock ({(trouble.InnerException ?? trouble).Message.TrimEnd('.')})";
        }
    }

    private static bool IsDisk(Exception? trouble) => trouble is UnauthorizedAccessException or (IOException and not EndOfStreamException);

    private static IEnumerable<ReadFault> Named(IReadOnlyList<ReadFault> faults, string file) => faults.Select(fault => new ReadFault(file, fault.ToldOf(file)));
}
