using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using StormClock.Core.Acknowledgements;
using StormClock.Service.Web;

namespace StormClock.Pages.Tests.Served;

/// <summary>Takes links out of the letters that were sent, as their readers would.</summary>
internal static partial class Links
{
    /// <summary>Path of a link that a person got, from the newest letter that has one of its sort.</summary>
    /// <param name="number">From 0, in the letter's order.</param>
    public static string Of(ServedStorm storm, AckPurpose purpose, string personId = "gardener", int number = 0)
    {
        var keys = storm.Services.GetRequiredService<AckKeyRing>().Keys;
        foreach (var letter in storm.Mails.Where(mail => mail.PersonId == personId && mail.Channel == "email").Reverse())
        {
            var paths = Link().Matches(letter.Message.Text).Select(link => link.Value).Distinct()
                .Where(path => AckToken.Read(path[3..], keys, storm.Now).Token?.Purpose == purpose).ToList();
            if (paths.Count > number) return paths[number];
        }

        throw new InvalidOperationException($"No letter to {personId} has a link for {purpose}; subjects: {string.Join("; ", storm.Mails.Select(mail => mail.Message.Subject))}");
    }

    /// <summary>Path of the page on which a person's devices are subscribed; letters offer it only while a storm is still far off.</summary>
    public static string ForPush(ServedStorm storm, string personId) =>
        new Uri(storm.Services.GetRequiredService<LinkMaker>().ForPush("tern-hook", personId, storm.Now)!).AbsolutePath;

    [GeneratedRegex(@"/j/[A-Za-z0-9_-]+")]
    private static partial Regex Link();
}
