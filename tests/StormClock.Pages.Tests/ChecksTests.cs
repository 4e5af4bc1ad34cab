using StormClock.Pages.Tests.Checks;
using StormClock.Pages.Tests.Served;
using Xunit.Sdk;

namespace StormClock.Pages.Tests;

/// <summary>Each check finds the fault that it is there for, and lets a good page pass.</summary>
public class ChecksTests(InstalledBrowser browser, Scenes scenes)
{
    private const string Style = "<style>button, .far { display: block; height: 44px } :focus-visible { outline: 3px solid }</style>";

    private const string Good = $"<header>Garden</header><main><h1>Work</h1><p>Before <a href='#a'>a word</a> after.</p><button>Done</button><details><summary class='far'>More</summary><button>Other</button></details><label>Name <input style='height: 44px'></label></main>";

    [Fact]
    public Task Page_WithoutFault_PassesEveryCheck() => ShowAsync(Good, async page =>
    {
        await Keyboard.WalkAsync(page);
        await Layout.UnfoldAsync(page);
        await Keyboard.WalkAsync(page);
        await Layout.CheckWidthAsync(page);
        await Layout.CheckTargetsAsync(page);
        await Axe.CheckAsync(page);
    });

    [Theory]
    [InlineData("<main><h1>Work</h1><button aria-label='Go'></button><img src='data:,'></main>", "image-alt")]
    [InlineData("<main><h1>Work</h1><p style='color: #aaa'>pale</p></main>", "color-contrast")]
    [InlineData("<main><h1>Work</h1><input></main>", "label (critical)")]
    [InlineData("<main><h2>Work</h2></main>", "page-has-heading-one")]
    [InlineData("<h1>Work</h1>", "region")]
    public Task Axe_FaultyPage_NamesTheRule(string body, string rule) => FindsAsync(body, Axe.CheckAsync, rule);

    [Theory]
    [InlineData("<main><button tabindex='2'>Second</button><button tabindex='1'>First</button></main>", "should have reached button \"Second\" and reached button \"First\"")]
    [InlineData("<main><style>:focus-visible { outline: none !important }</style><button>Done</button></main>", "nobody sees")]
    [InlineData("<main><button id='a'>A</button><button id='b'>B</button><script>a.onkeydown = event => event.preventDefault()</script></main>", "should have reached button \"B\" and reached button \"A\"")]
    [InlineData("<main><button>A</button><button id='b'>B</button><script>b.onkeydown = event => event.preventDefault()</script></main>", "should leave the page and reached button \"B\"")]
    public Task Walk_FaultyPage_SaysWhereTabWent(string body, string said) => FindsAsync(body, Keyboard.WalkAsync, said);

    [Theory]
    [InlineData("<main><p style='width: 900px'>wide</p></main>", "the page is 9")]
    [InlineData("<main style='overflow: hidden; width: 200px; white-space: nowrap'>a line that is longer than its box can ever be</main>", "is cut off")]
    [InlineData("<body style='overflow-x: hidden'><main><p style='width: 900px'>wide</p></main>", "sticks out")]
    [InlineData("<main><svg width='50' height='20'><text x='10' y='15'>much too long</text></svg></main>", "cut off by its picture")]
    public Task Width_FaultyPage_NamesWhatSticksOut(string body, string said) => FindsAsync(body, Layout.CheckWidthAsync, said);

    [Theory]
    [InlineData("<button style='height: 30px'>Done</button>", "button \"Done\" is 30 px high")]
    [InlineData("<ul><li><a href='#a'>Calendar</a></li></ul>", "a \"Calendar\" is")]
    [InlineData("<label><input type='checkbox'> All of it</label>", "input")]
    public Task Targets_TooLow_AreNamed(string body, string said) => FindsAsync(body, Layout.CheckTargetsAsync, said);

    [Fact]
    public void Wire_TooMuchWithoutPhotos_SaysWhatCame()
    {
        var parts = new[] { new WirePart("/", "text/html", 30_000), new WirePart("/map.svg", "image/svg+xml", 30_000), new WirePart("/photo.jpg", "image/jpeg", 900_000) };

        Wire.Check(parts, most: 60_000);
        Assert.Contains("60000 bytes came", Assert.ThrowsAny<XunitException>(() => Wire.Check(parts, most: 59_999)).Message);
        Assert.ThrowsAny<XunitException>(() => Wire.Check([]));
    }

    [Theory]
    [InlineData("<script>console.error('broken')</script>", "broken")]
    [InlineData("<script>throw new Error('broken')</script>", "broken")]
    [InlineData("<meta http-equiv='Content-Security-Policy' content=\"style-src 'none'\"><p style='color: red'>red</p>", "Content Security Policy")]
    [InlineData("<img src='http://127.0.0.1:9/none.png' alt=''>", "none.png")]
    public async Task Visit_PageThatIsNotQuiet_Fails(string body, string said)
    {
        var fault = await Assert.ThrowsAnyAsync<XunitException>(() => ShowAsync(body, _ => Task.CompletedTask));
        Assert.Contains(said, fault.Message);
    }

    [Fact]
    public Task Press_NameThatTabNeverReaches_SaysWhatItReached() =>
        FindsAsync("<main><button>Done</button></main>", page => Keyboard.PressAsync(page, "Later"), "does not reach \"Later\"; it reached: Done");

    [Fact]
    public Task Change_ToAnotherScreen_IsWhatThePageThenHas() => browser.VisitAsync(Screens.Desktop, async visit =>
    {
        foreach (var screen in new[] { Screens.Zoomed, Screens.Narrow })
        {
            await Screens.ChangeAsync(visit.Page, screen);
            Assert.Equal([screen.Width, screen.Height, (int)screen.Scale], await visit.Page.EvaluateAsync<int[]>("() => [innerWidth, innerHeight, devicePixelRatio]"));
        }
    });

    /// <summary>A reader who is sent elsewhere has not seen the page that was asked for.</summary>
    [Fact]
    public async Task Go_PageThatLeadsElsewhere_Fails()
    {
        var storm = await scenes.PlayAsync(Scene.WorkForPhones);
        await browser.VisitAsync(Screens.Desktop, async visit =>
        {
            await Assert.ThrowsAnyAsync<XunitException>(() => visit.GoAsync(storm.At("/g/tern-hook/jobs")));
            await visit.GoAsync(storm.At("/g/tern-hook/jobs"), arrives: "/in");
        });
    }

    private Task FindsAsync(string body, Func<IPage, Task> check, string said) => ShowAsync(body, async page =>
    {
        var fault = await Assert.ThrowsAnyAsync<XunitException>(() => check(page));
        Assert.Contains(said, fault.Message);
    });

    private Task ShowAsync(string body, Func<IPage, Task> look) => browser.VisitAsync(Screens.Phone, async visit =>
    {
        await visit.Page.SetContentAsync($"<!DOCTYPE html><html lang='en'><head><title>Page</title><meta name='viewport' content='width=device-width'>{Style}</head><body>{body}</body></html>");
        await look(visit.Page);
    });
}
