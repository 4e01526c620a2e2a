// A customer who is not on record yet, entered from where one is chosen and chosen there afterwards.

import { may } from "../mine.ts";
import { formAndBack } from "../shell/route.ts";

export const NewCustomer = () =>
  may("customer") ? (
    <a class="button" href={formAndBack("customers", "new")}>
      Enter a new customer
    </a>
  ) : null;
