using Microsoft.AspNetCore.Http.HttpResults;

namespace StormClock.Service.Web;

/// <summary>
/// The only scripts there are: one asks the browser for a subscription when its button is pressed, one shows notifications.
/// Part of the program, so that no file can be missing beside it.
/// </summary>
internal static class PushScripts
{
    public const string PageName = "push.js";

    /// <summary>At the root of the pages, because a worker serves only what lies at or below its own address.</summary>
    public const string WorkerName = "push-worker.js";

    private const string Page =
        """
        "use strict";
        const form = document.getElementById("subscribe");
        const said = document.getElementById("said");

        async function subscribe(pushManager) {
          const options = { userVisibleOnly: true, applicationServerKey: form.dataset.key };
          try {
            return await pushManager.subscribe(options);
          } catch (fault) {
            // Subscribed under an older key of the box: that subscription is of no use any more.
            const old = fault.name === "InvalidStateError" ? await pushManager.getSubscription() : null;
            if (!old) throw fault;
            await old.unsubscribe();
            return pushManager.subscribe(options);
          }
        }

        form.addEventListener("submit", async event => {
          event.preventDefault();
          try {
            if (!("serviceWorker" in navigator) || !("PushManager" in window)) {
              throw new Error(form.dataset.unable);
            }
            said.textContent = form.dataset.asking;
            if (await Notification.requestPermission() !== "granted") {
              throw new Error(form.dataset.refused);
            }
            await navigator.serviceWorker.register(form.dataset.worker);
            const registration = await navigator.serviceWorker.ready;
            const { endpoint, keys } = (await subscribe(registration.pushManager)).toJSON();
            form.elements.endpoint.value = endpoint;
            form.elements.p256dh.value = keys.p256dh;
            form.elements.auth.value = keys.auth;
            form.submit();
          } catch (fault) {
            said.textContent = form.dataset.unchanged + " " + fault.message;
          }
        });

        """;

    private const string Worker =
        """
        "use strict";
        self.addEventListener("push", event => {
          let note;
          try {
            note = event.data.json();
          } catch {
            note = { title: "StormClock: a message came", line: "It could not be read here. Look at your mail.", link: null };
          }
          event.waitUntil(self.registration.showNotification(note.title, { body: note.line, tag: note.id, data: note.link }));
        });

        self.addEventListener("notificationclick", event => {
          event.notification.close();
          event.waitUntil(self.clients.openWindow(event.notification.data || self.registration.scope));
        });

        """;

    public static ContentHttpResult ServePage(HttpResponse response) => Serve(response, Page);

    public static ContentHttpResult ServeWorker(HttpResponse response) => Serve(response, Worker);

    /// <summary>Looked at anew each time, so that an upgrade reaches every device.</summary>
    private static ContentHttpResult Serve(HttpResponse response, string script)
    {
        response.Headers.CacheControl = "no-cache";
        return TypedResults.Text(script, "text/javascript; charset=utf-8");
    }
}
