/** Raised whenever the fold would give another standing for the same entries; see cellarapp/domain. */
export const RULES_VERSION = 3;
