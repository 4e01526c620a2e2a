// Whether the browser has promised to keep what this phone holds, and how much room there is.

import { signal } from "@preact/signals";

export interface StorageState {
  /** null while it is not known, or where the browser has no such promise to give. */
  persisted: boolean | null;
  usedBytes: number | null;
  roomBytes: number | null;
}

export const storage = signal<StorageState>({ persisted: null, usedBytes: null, roomBytes: null });

const manager = (): StorageManager | undefined => navigator.storage as StorageManager | undefined;

export const lookAtStorage = async (): Promise<void> => {
  const there = manager();
  if (there === undefined) return;
  const [persisted, estimate] = await Promise.all([
    there.persisted?.() ?? null,
    there.estimate?.() ?? null,
  ]);
  storage.value = {
    persisted,
    usedBytes: estimate?.usage ?? null,
    roomBytes: estimate?.quota ?? null,
  };
};

/** Ask for the promise. Some browsers ask the person, others decide by how the app is used. */
export const askToKeep = async (): Promise<boolean> => {
  const granted = (await manager()?.persist?.()) ?? false;
  await lookAtStorage();
  return granted;
};

const megabytes = (bytes: number): string => {
  const mb = bytes / 1_000_000;
  return mb >= 1000
    ? `${(mb / 1000).toFixed(1)} GB`
    : `${mb < 10 ? mb.toFixed(1) : Math.round(mb)} MB`;
};

export const storageWords = ({ persisted, usedBytes, roomBytes }: StorageState): string[] => {
  const kept =
    persisted === null
      ? "This browser does not say whether it keeps what the app holds."
      : persisted
        ? "The phone keeps what this app holds until you remove the app."
        : "The phone may clear what this app holds when it runs out of room.";
  if (usedBytes === null || roomBytes === null) return [kept];
  return [kept, `${megabytes(usedBytes)} used of ${megabytes(roomBytes)}.`];
};
