// The worker starts here: it keeps the client of one build for use with no network.

import { cleanupOutdatedCaches, precacheAndRoute } from "workbox-precaching";

cleanupOutdatedCaches();
precacheAndRoute([...__PRECACHE__]);
