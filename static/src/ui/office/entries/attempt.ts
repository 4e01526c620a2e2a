// Something done to the phone itself, which no entry records: it is said when it is done, and what
// went wrong is said in its own words.

import { faultWords, say } from "../../parts/say.ts";

export const attempt = async (done: string, work: () => Promise<unknown>): Promise<boolean> => {
  try {
    await work();
    say.saved(done, []);
    return true;
  } catch (fault) {
    say.trouble(faultWords(fault));
    return false;
  }
};
