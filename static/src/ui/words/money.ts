// Money in words: whole pounds, since what is reckoned is no bill.

/** "£1,020"; less than half a pound is "under £1" rather than nothing. */
export const pounds = (pence: number): string => {
  const whole = Math.floor(pence / 100 + 0.5);
  return whole === 0 && pence > 0 ? "under £1" : `£${whole.toLocaleString("en-GB")}`;
};
