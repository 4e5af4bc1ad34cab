using System.CommandLine;
using System.Text;
using StormClock.Core.Garden;
using StormClock.Service.Books;
using StormClock.Service.Books.Csv;

namespace StormClock.Service.Commands;

/// <summary><c>items</c>: the items of a garden book as a table for a spreadsheet, or an empty table to begin with.</summary>
internal static class ItemsCommand
{
    public static Command Make()
    {
        var output = new Option<string?>("--out") { Description = "Write the items of a book to this file, one row an item." };
        var template = new Option<string?>("--template") { Description = "Write a table with every column and three invented rows to this file." };
        var garden = new Option<string?>("--garden") { Description = "The garden book (YAML). Default: the only one of the installation." };
        var config = new Option<string?>("--config") { Description = "Folder of the installation's files." };
        var command = new Command("items", "The items of a garden book as a CSV table. A book takes such a table in by 'items_file: FILE.csv', beside itself.") { output, template, garden, config };
        command.Validators.Add(parsed =>
        {
            if (parsed.GetValue(output) is null == parsed.GetValue(template) is null) parsed.AddError("items: give either --out or --template");
            else if (parsed.GetValue(template) is not null && parsed.GetValue(garden) is not null) parsed.AddError("items: --template takes no --garden");
        });
        command.SetAction(parsed => parsed.GetValue(template) is { } empty
            ? Keep(empty, ItemTemplate.Text(), "an empty table; put your own rows in place of the three invented ones")
            : Items(parsed.GetValue(output)!, parsed.GetValue(garden), parsed.GetValue(config)));
        return command;
    }

    private static int Items(string file, string? garden, string? config)
    {
        var inputs = new Inputs();
        inputs.GivenFolder(config, "--config");
        var book = (garden ?? OnlyGarden(inputs, ConfigFolder.Find(config))) is { } path ? inputs.Garden(path) : null;
        if (inputs.Report()) return ExitCode.BadInput;

        var kept = Keep(file, ItemTableWriter.Write(book!), book!.Items.Count == 1 ? "1 item" : $"{book.Items.Count} items");
        if (kept == ExitCode.Good) TellLost(book);
        return kept;
    }

    private static string? OnlyGarden(Inputs inputs, string configFolder)
    {
        var folder = Installation.GardensIn(configFolder);
        var files = GardenFiles.Load(folder);
        if (files.Count == 1) return files[0].File;

        inputs.Fault($"--garden: name one garden book; {(files.Count == 0 ? $"there is none in {folder}" : $"known: {string.Join(", ", files.Select(garden => garden.File))}")}");
        return null;
    }

    private static void TellLost(GardenBook book)
    {
        var lost = ItemTableWriter.Lost(book);
        if (lost.Count == 0) return;

        Console.Error.WriteLine("A table has no place for these; to keep them, leave such items in the book:");
        foreach (var line in lost) Console.Error.WriteLine($"  {line}");
    }

    /// <summary>A table may be somebody's only copy of their survey: nothing is written over. Spreadsheets know UTF-8 by its mark.</summary>
    private static int Keep(string file, string table, string what)
    {
        try
        {
            if (File.Exists(file))
            {
                Console.Error.WriteLine($"{file}: is there already; name another file, or take this one away first");
                return ExitCode.BadInput;
            }

            File.WriteAllText(file, table, new UTF8Encoding(encoderShouldEmitUTF8Identifier: true));
            Console.WriteLine($"{file}: {what}");
            return ExitCode.Good;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine(trouble.Message);
            return ExitCode.OutsideTrouble;
        }
    }
}
