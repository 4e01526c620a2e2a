// What a brewery of four people says of a phone.

import type { Me } from "../../../static/src/store/account.ts";

export const ME: Me = {
  device: { id: "d", name: "Bench tablet" },
  person: { name: "Ann", role: "owner" },
  people: [
    { name: "Ann", role: "owner", pin_check: null },
    { name: "Bob", role: "cellar", pin_check: null },
    { name: "Dee", role: "driver", pin_check: null },
    { name: "Eve", role: "reader", pin_check: null },
  ],
  stepped_up_until: null,
  version: 3,
};
