using System.Text;
using Microsoft.AspNetCore.Identity;
using StormClock.Service.Store;

namespace StormClock.Service.Visits;

/// <summary>
/// The installation's passcode, as a salted hash in a file of the data folder (PBKDF2 as the framework does it). A file, so that a
/// command can set it while the service runs.
/// </summary>
public sealed class PasscodeFile(string path)
{
    /// <summary>Characters; length is what makes a passcode hard to guess (NIST SP 800-63B, 3.1.1.2 asks for 15 where nothing else is asked for).</summary>
    public const int Shortest = 15;

    /// <summary>So that hashing stays cheap whatever a form brings.</summary>
    public const int Longest = 200;

    private static readonly PasswordHasher<string> Hasher = new();

    public const string Name = "passcode";

    public bool IsSet => File.Exists(path);

    /// <summary>Tells this passcode from the one before and after, and nothing else; null when none is set.</summary>
    public string? Mark => IsSet ? Fingerprint.Of(File.ReadAllText(path)) : null;

    public static bool IsGood(string passcode) => passcode.Trim().Length >= Shortest && passcode.Length <= Longest;

    /// <summary>Puts it in place of the one before, in one step.</summary>
    public void Set(string passcode)
    {
        var hash = Hasher.HashPassword(Name, passcode.Trim());
        SecretFile.Replace(path, Encoding.ASCII.GetBytes(hash + "\n"));
    }

    /// <summary>False too when none is set, or the file is spoilt.</summary>
    public bool Matches(string passcode)
    {
        if (!IsSet || passcode.Length > Longest) return false;
        try
        {
            return Hasher.VerifyHashedPassword(Name, File.ReadAllText(path).Trim(), passcode.Trim()) != PasswordVerificationResult.Failed;
        }
        catch (FormatException)
        {
            return false;
        }
    }
}
