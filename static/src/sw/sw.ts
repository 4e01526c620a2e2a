// The worker starts here: it keeps the client of one build for use with no network.
// It never touches the brewery's answers: the book and the outbox are the page's.

import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from "workbox-precaching";
import { NavigationRoute, registerRoute } from "workbox-routing";
import { USE_NOW } from "./use-now.ts";

declare const self: ServiceWorkerGlobalScope;

/** Addresses that the server answers itself, also when a person types them. */
const NOT_THE_APP = [/^\/(api|problems|f|8003|yours)(\/|$)/];

cleanupOutdatedCaches();
precacheAndRoute([...__PRECACHE__]);
registerRoute(
  new NavigationRoute(createHandlerBoundToURL("/index.html"), { denylist: NOT_THE_APP }),
);

// A new version waits until a person asks for it: no tab is changed under somebody's hands.
self.addEventListener("message", (event) => {
  if (event.data === USE_NOW) void self.skipWaiting();
});

// The very first version takes charge at once, so that the next start needs no network.
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
