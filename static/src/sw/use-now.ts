/** What the page tells a waiting worker when a person wants the new version. */
export const USE_NOW = "use now";
