// All that the bench needs for doses, in one piece that is fetched after the pad has come up.

export { DosesNow } from "./DosesNow.tsx";
export { usedLots } from "./lots-used.ts";
export { fillDoses, finingFacts, finingRefusal } from "./noted.ts";
