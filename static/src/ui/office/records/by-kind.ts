// What a form holds of amounts by kind: a line for each kind, "firkin=15".

export const byKind = (text: string): Map<string, string> =>
  new Map(
    text
      .split("\n")
      .filter(Boolean)
      .map((line): [string, string] => {
        const at = line.indexOf("=");
        return [line.slice(0, at), line.slice(at + 1)];
      }),
  );

/** Kinds with nothing typed are left out, so that a form with none of them is empty. */
export const writtenByKind = (amounts: ReadonlyMap<string, string>): string =>
  [...amounts]
    .filter(([, amount]) => amount.trim() !== "")
    .map(([kind, amount]) => `${kind}=${amount}`)
    .join("\n");
