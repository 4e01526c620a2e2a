// CRC-32 as in zip and PNG (ISO 3309), bit for bit what Python's zlib.crc32 gives.

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) {
    value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return value;
});

const encoder = new TextEncoder();

export const crc32 = (text: string): number => {
  let sum = 0xffffffff;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code > 0x7f) return crc32OfBytes(encoder.encode(text));
    sum = (sum >>> 8) ^ (TABLE[(sum ^ code) & 0xff] as number);
  }
  return (sum ^ 0xffffffff) >>> 0;
};

/** Plain letters, which is all that ids hold, do not need to be encoded first. */
const crc32OfBytes = (bytes: Uint8Array): number => {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ (TABLE[(sum ^ byte) & 0xff] as number);
  return (sum ^ 0xffffffff) >>> 0;
};
