using Microsoft.AspNetCore.Http.HttpResults;

namespace StormClock.Service.Web.Garden;

/// <summary>
/// For the far end of the garden, where a phone has no connection: a form that cannot be sent waits on the phone and is sent later. All pages work
/// without it. A form carries a mark of its own, so that it is taken once however often it comes.
/// </summary>
internal static class WalkScript
{
    public const string Name = "walk.js";

    private const string Js =
        """
        "use strict";
        const place = "stormclock-kept";
        const told = document.getElementById("kept");
        const read = () => JSON.parse(localStorage.getItem(place) ?? "[]");
        const write = list => localStorage.setItem(place, JSON.stringify(list));
        const tell = () => {
          const waiting = read();
          const refused = waiting.some(form => form.refused);
          told.textContent = waiting.length === 0 ? "" : (refused ? told.dataset.refused : told.dataset.waiting).replace("#", waiting.length);
        };
        const post = form => fetch(form.action, {
          method: "POST", body: new URLSearchParams(form.fields), credentials: "same-origin", redirect: "follow"
        });

        let sending = false;
        const sendKept = async () => {
          if (sending) return;
          sending = true;
          try {
            for (const form of read()) {
              if (form.refused) continue;
              const answer = await post(form);
              const fine = answer.ok && !answer.url.endsWith("/in") && new URL(answer.url).pathname !== new URL(form.action).pathname;
              write(fine ? read().filter(other => other.once !== form.once)
                : read().map(other => other.once === form.once ? { ...other, refused: answer.status !== 429 && answer.status < 500 } : other));
              if (!fine && (answer.status === 429 || answer.status >= 500)) break;
            }
          } catch {
          } finally {
            sending = false;
            tell();
          }
        };

        document.addEventListener("submit", async event => {
          const form = event.target;
          if (!form.hasAttribute("data-keep") || form.querySelector("input[type=file]")) return;
          event.preventDefault();
          const data = new FormData(form, event.submitter);
          const fields = [...data.entries()];
          const kept = { action: form.action, fields, once: data.get("once") };
          try {
            const answer = await post(kept);
            if (answer.redirected) location.assign(answer.url);
            else document.documentElement.innerHTML = await answer.text();
          } catch {
            write([...read(), kept]);
            form.reset();
            form.querySelector("[name=once]").value = crypto.randomUUID ? crypto.randomUUID() : String(Math.random()).slice(2) + Date.now();
            tell();
          }
        });
        addEventListener("online", sendKept);
        setInterval(sendKept, 20000);
        tell();
        sendKept();

        """;

    public static ContentHttpResult Serve(HttpResponse response)
    {
        response.Headers.CacheControl = "max-age=3600";
        return TypedResults.Text(Js, "text/javascript; charset=utf-8");
    }
}
