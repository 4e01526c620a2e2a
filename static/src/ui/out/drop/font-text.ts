// The fonts that every PDF reader has know the letters of Western Europe. Others lose their accent
// where they have one, and become a question mark where not.

const BEYOND = new Set("€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ");

const has = (letter: string): boolean => {
  const code = letter.codePointAt(0) ?? 0;
  return (code >= 32 && code < 127) || (code >= 160 && code < 256) || BEYOND.has(letter);
};

export const fontText = (text: string): string =>
  [...text]
    .map((letter) => {
      if (has(letter)) return letter;
      return [...letter.normalize("NFKD")].filter(has).join("") || "?";
    })
    .join("");
