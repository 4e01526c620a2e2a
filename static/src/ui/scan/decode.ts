// Reads codes off camera pictures. The decoder is fetched when first wanted, from this app's own
// files, which are on the phone: it works with no network.

import { prepareZXingModule, type ReaderOptions, readBarcodes } from "zxing-wasm/reader";
import wasm from "zxing-wasm/reader/zxing_reader.wasm";

// Left alone, the library would fetch its decoder from somewhere else.
prepareZXingModule({ overrides: { locateFile: () => wasm } });

/** What stands on plates: our QR codes, and the asset numbers of those who have GS1 codes already. */
const OPTIONS: ReaderOptions = {
  formats: ["QRCode", "DataMatrix", "Code128"],
  maxNumberOfSymbols: 1,
  tryHarder: true,
};

/** The text of the code in a picture, null where there is none. */
export const decode = async (picture: ImageData): Promise<string | null> =>
  (await readBarcodes(picture, OPTIONS))[0]?.text ?? null;
