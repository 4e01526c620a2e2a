// Asked for only where a number is not on record, and fetched then.

export const NEW_CONTAINER = {
  title: "Bench",
  place: "bench",
  load: () => import("./NewContainer.tsx"),
};
