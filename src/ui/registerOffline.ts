import { showOffline } from "./screenStore.ts";

/**
 * Stores the whole app on the device, so that it starts without a network. Call it once listening works:
 * storing fetches every file again, the voice last, and must not compete with the first start.
 *
 * A newer version is fetched in the background and waits until every window is closed; it never
 * takes over an open case. Failure is shown and changes nothing else.
 * Not for: the development server, which has no worker to register.
 */
export async function registerOffline(): Promise<void> {
  if (!import.meta.env.PROD) return;
  if (!("serviceWorker" in navigator)) {
    showOffline("failed");
    return;
  }
  try {
    const registration = await navigator.serviceWorker.register("/sw.js");
    const tell = () => {
      if (registration.waiting) showOffline("updateWaiting");
      else if (registration.active) showOffline("ready");
    };
    const follow = (worker: ServiceWorker | null) => {
      worker?.addEventListener("statechange", () => {
        if (worker.state === "redundant" && !registration.active) showOffline("failed");
        else tell();
      });
    };
    follow(registration.installing);
    registration.addEventListener("updatefound", () => follow(registration.installing));
    tell();
  } catch {
    showOffline("failed");
  }
}
