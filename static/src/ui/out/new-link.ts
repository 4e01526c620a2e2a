// A link to a customer's page: the customer's id and 160 random bits together, in base64url. The
// ledger keeps the SHA-256 of it, so that nobody can read a link that works out of the ledger.

const SECRET_BYTES = 20;

export interface PageLink {
  token: string;
  hash: string;
}

const idBytes = (id: string): number[] =>
  (id.replaceAll("-", "").match(/../g) ?? []).map((two) => Number.parseInt(two, 16));

const base64url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll("+", "-")
    .replaceAll("/", "_");

const hex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

export const newLink = async (customer: string): Promise<PageLink> => {
  const secret = crypto.getRandomValues(new Uint8Array(SECRET_BYTES));
  const token = base64url(Uint8Array.from([...idBytes(customer), ...secret]));
  const hash = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(token));
  return { token, hash: hex(new Uint8Array(hash)) };
};
