using StormClock.Pages.Tests.Served;
using StormClock.Service.Books;

namespace StormClock.Pages.Tests;

/// <summary>What somebody might type, or send past what a form allows, in every field of every form: none of it becomes markup, a fault or another place in a file.</summary>
public class HostileInputTests(InstalledBrowser browser)
{
    private static readonly Instant Monday = Instant.FromUtc(2027, 9, 20, 12, 0);

    private static readonly string[] Addresses =
    [
        "/in", "/start", "/start/mail", "/keeper", "/keeper/people/tern-hook", "/keeper/people/tern-hook/helper", "/g/tern-hook/now", "/g/tern-hook/jobs", "/g/tern-hook/walk", "/g/tern-hook/walk/porch", "/g/tern-hook/walk/porch/satsuma-halves",
        "/g/tern-hook/plot-map", "/g/tern-hook/plot-map?place=item/satsuma-halves", "/g/tern-hook/plot-map?place=area/porch", "/g/tern-hook/after", "/g/tern-hook/worry", "/g/tern-hook/storms", "/",
    ];

    /// <summary>Not what leads out, plays a whole storm, locks the door with a passcode that is shown nowhere, or sends files.</summary>
    private const string Left = "form[method=post]:not([action$='out']):not([action*='practice']):not([action$='passcode']):not([enctype])";

    /// <summary>Every field of a form gets the text, past its own limits; only what marks the form as ours stays.</summary>
    private const string Fill =
        """
        (form, text) => {
          form.noValidate = true;
          for (const field of form.elements) {
            if (!field.name || field.name.startsWith("__") || field.name === "once" || field.tagName === "BUTTON") continue;
            field.removeAttribute("maxlength");
            if (field.tagName === "SELECT") field.append(new Option(text, text, true, true));
            else if (["radio", "checkbox"].includes(field.type)) { field.checked = true; field.value = text; }
            else { if (!["hidden", "image", "submit"].includes(field.type)) field.type = "text"; field.value = text; }
          }
        }
        """;

    /// <summary>The next page has come when this form is no longer there, whether a browser or a script of ours fetched it.</summary>
    private const string Send = "form => { window.sent = form; form.requestSubmit(form.querySelector('button, input[type=image]')); }";

    private const string Markup = "() => !!window.hit || !!document.querySelector('script:not([src]), [onerror], [onfocus], img[src=x], iframe')";

    /// <summary>Those that are explicit run with the long ones.</summary>
    [Theory]
    [Trait("Category", "Long")]
    [InlineData("\"><script>hit=1</script><img src=x onerror=hit=1>")]
    [InlineData("' onfocus=hit=1 autofocus x='<iframe srcdoc=\"<script>parent.hit=1</script>\">", Explicit = true)]
    [InlineData("../../../../etc/passwd", Explicit = true)]
    [InlineData("x}, role: keeper, y: {z: \"1\n- id: more\n  name: [")]
    [InlineData("\u202e{{7*7}}${7*7}\u0007%00", Explicit = true)]
    public async Task Forms_FilledWithIt_StayForms(string text)
    {
        await using var storm = await ServedStorm.StartAsync(Monday, new() { Practice = false });
        var before = Book(storm);
        await browser.VisitAsync(Screens.Desktop with { Name = "hostile" }, async visit =>
        {
            visit.AllowRefusals();
            var dialogs = 0;
            visit.Page.Dialog += (_, dialog) =>
            {
                dialogs++;
                _ = dialog.DismissAsync();
            };
            var sent = 0;
            foreach (var address in Addresses)
            {
                await visit.GoAsync(storm.At(address));
                for (var number = await visit.Page.Locator(Left).CountAsync() - 1; number >= 0; number--)
                {
                    await SendAsync(visit.Page, number, text, address);
                    sent++;
                    await visit.Page.GotoAsync(storm.At(address).AbsoluteUri);
                }
            }

            foreach (var address in Addresses)
            {
                await visit.Page.GotoAsync(storm.At(address).AbsoluteUri);
                Assert.False(await visit.Page.EvaluateAsync<bool>(Markup), address);
            }

            Assert.True(sent > 10);
            Assert.Equal(0, dialogs);
        });

        var after = Book(storm);
        Assert.Superset(before.Items.Select(item => item.Id).ToHashSet(), after.Items.Select(item => item.Id).ToHashSet());
        Assert.Equal(before.People.Select(person => (person.Id, person.Role)), after.People.Take(before.People.Count).Select(person => (person.Id, person.Role)));
        Assert.Equal(["tern-hook.yaml"], Directory.GetFiles(Path.Combine(storm.ConfigFolder, "gardens")).Select(Path.GetFileName));
    }

    private static async Task SendAsync(IPage page, int number, string text, string address)
    {
        var form = page.Locator(Left).Nth(number);
        if (await form.Locator("button, input[type=image]").CountAsync() == 0) return;
        await form.EvaluateAsync(Fill, text);
        var answer = await page.RunAndWaitForResponseAsync(() => form.EvaluateAsync(Send), answer => answer.Request.Method == "POST");
        await page.WaitForFunctionAsync("() => !window.sent?.isConnected && document.readyState === 'complete'");
        Assert.True(answer.Status < 500, $"{address}, form {number}: {answer.Status}");
        Assert.False(await page.EvaluateAsync<bool>(Markup), $"{address}, form {number}");
    }

    private static Core.Garden.GardenBook Book(ServedStorm storm)
    {
        var read = GardenFiles.Read(Path.Combine(storm.ConfigFolder, "gardens", "tern-hook.yaml"));
        Assert.True(read.IsGood, string.Join("\n", read.Faults.Select(fault => fault.Reason)));
        return read.Value!;
    }
}
