using System.Reflection;
using StormClock.Core.Units;

namespace StormClock.Core.Tests;

/// <summary>The walls of the house: Core is pure, and its rooms look one way only.</summary>
public class HouseRulesTests
{
    /// <summary>Each room may use itself and the rooms before it. Nobody uses Formats.</summary>
    private static readonly string[] Rooms =
        ["Units", "Garden", "Advisories", "Hazards", "Loads", "Water", "Worth", "Stages", "Plan", "Reminders", "Acknowledgements", "Recheck", "Formats"];

    private static readonly Assembly Core = typeof(GeoPoint).Assembly;

    /// <summary>What reaches the world, the clock or another thread. The prefix of a full type name.</summary>
    private static readonly string[] Impure =
    [
        "System.IO.File", "System.IO.Directory", "System.IO.Path", "System.Net.", "System.Diagnostics.", "System.Threading.Tasks.Task",
        "System.Threading.Thread", "System.Threading.Timer", "System.Environment", "System.Console", "System.TimeProvider", "System.Random",
        "System.TimeZoneInfo", "NodaTime.SystemClock", "NodaTime.IClock", "Microsoft.Extensions.",
    ];

    [Fact]
    public void Core_ReferencedAssemblies_AreFrameworkNodaTimeAndNetTopologySuite()
    {
        var others = Core.GetReferencedAssemblies()
            .Select(name => name.Name!)
            .Where(name => !name.StartsWith("System.", StringComparison.Ordinal) && name is not ("System" or "netstandard" or "NodaTime" or "NetTopologySuite"));
        Assert.Empty(others);
    }

    [Fact]
    public void Core_EveryType_TouchesNothingOfTheWorld()
    {
        var offences = from type in Core.GetTypes()
                       from used in IlReferences.Of(type)
                       where !(IsIterator(type) && used == typeof(Environment))
                       where Impure.Any(prefix => (used.FullName ?? "").StartsWith(prefix, StringComparison.Ordinal))
                       select $"{type.FullName} uses {used.FullName}";
        Assert.Empty(offences);
    }

    [Fact]
    public void Rooms_EveryType_UsesOnlyItsOwnRoomAndTheRoomsBeforeIt()
    {
        var offences = from type in Core.GetTypes()
                       let room = RoomOf(type)
                       where room >= 0
                       from used in IlReferences.Of(type)
                       where used.Assembly == Core && RoomOf(used) > room
                       select $"{type.FullName} uses {used.FullName}";
        Assert.Empty(offences.Distinct());
    }

    [Fact]
    public void Rooms_EveryType_NeverUsesTheDesk()
    {
        var offences = from type in Core.GetTypes()
                       where RoomOf(type) >= 0
                       from used in IlReferences.Of(type)
                       where used.Assembly == Core && used.Namespace == "StormClock.Core" && used.Name is not null
                           && used.Name.StartsWith("StormDesk", StringComparison.Ordinal)
                       select $"{type.FullName} uses {used.FullName}";
        Assert.Empty(offences);
    }

    [Fact]
    public void Rooms_Namespaces_AreAllKnown()
    {
        var unknown = Core.GetTypes()
            .Select(type => type.Namespace)
            .Where(name => name is not null && name.StartsWith("StormClock.Core.", StringComparison.Ordinal))
            .Select(name => name!.Split('.')[2])
            .Where(room => !Rooms.Contains(room));
        Assert.Empty(unknown);
    }

    [Fact]
    public void NetTopologySuite_Use_StaysInOneType()
    {
        var users = Core.GetTypes()
            .Where(type => IlReferences.Of(type).Any(used => (used.Namespace ?? "").StartsWith("NetTopologySuite", StringComparison.Ordinal)))
            .Select(type => (type.DeclaringType ?? type).FullName)
            .Distinct();
        Assert.True(users.Count() <= 1, string.Join(", ", users));
    }

    /// <summary>The compiler's iterators ask which thread they are on; no code of ours does.</summary>
    private static bool IsIterator(Type type) => type.Name.StartsWith('<') && type.IsAssignableTo(typeof(System.Collections.IEnumerator));

    private static int RoomOf(Type type)
    {
        var parts = (type.Namespace ?? "").Split('.');
        return parts.Length > 2 && parts[0] == "StormClock" && parts[1] == "Core" ? Array.IndexOf(Rooms, parts[2]) : -1;
    }
}
