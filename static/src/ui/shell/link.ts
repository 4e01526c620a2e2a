// The links that the brewery gives out: "…/#begin=<secret>" for the first owner and
// "…/#pair=<secret>" for a phone. The secret leaves the address, and so the history, at once.

export type Link = { way: "begin" | "pair"; secret: string };

const LINK = /#(begin|pair)=([\w.~-]{1,500})$/;

/** What a link means, opened or pasted; null where it is none. */
export const readLink = (text: string): Link | null => {
  const found = LINK.exec(text.trim());
  return found === null ? null : { way: found[1] as Link["way"], secret: found[2] as string };
};
