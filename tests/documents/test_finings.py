"""What finings put into a fill, for its label."""

from typing import Any

import pytest

from cellarapp.documents.labels.finings import is_fined, sulphites_mg_per_l
from cellarapp.domain.fold import step
from cellarapp.domain.standing import Contents, blank

from ..making import Phone, made_id

BEER = {
    "isinglass_ml_per_hl": 1390, "auxiliary": "auxiliary_alginate", "auxiliary_ml_per_hl": 347,
}  # fmt: skip
WEAK = made_id("lot of weak isinglass")
LOTS = {WEAK: {"so2_mg_per_l": 250}}
ISINGLASS = {"what": "isinglass", "amount_ml": 556}
ALGINATE = {"what": "auxiliary_alginate", "amount_ml": 139}
HOPS = {"what": "hops", "amount_g": 20}


def holding(*doses: dict[str, Any]) -> Contents:
    """40 L with these doses."""
    entry: Any = Phone().filled("117", doses=list(doses))
    contents = step(
        blank("117"), entry | {"effective_at": entry["happened_at"], "clock": "ok"}
    ).standing["contents"]
    assert contents is not None
    return contents


@pytest.mark.parametrize(
    ("doses", "more", "fined"),
    [
        ([ALGINATE], {}, True),  # isinglass follows alginate by hours
        ([ALGINATE], {"isinglass_ml_per_hl": 0}, False),
        ([HOPS], {}, False),
        ([], {}, True),
        ([], {"vegan": True}, False),
        ([ISINGLASS], {"vegan": True}, True),
    ],
)
def test_beer_that_had_alginate_is_to_be_fined(
    doses: list[dict[str, Any]], more: dict[str, Any], fined: bool
) -> None:
    """So no label that is printed meanwhile calls it unfined."""
    assert is_fined(holding(*doses), BEER | more) is fined


@pytest.mark.parametrize(
    ("own", "doses", "total"),
    [
        (0, [ALGINATE, ISINGLASS], 7.99),
        (0, [ALGINATE], 7.99),
        (0, [], 7.99),
        (31, [ISINGLASS], 10.05),
        (0, [ISINGLASS | {"lot": WEAK}], 3.48),
        (None, [ISINGLASS], None),
        (None, [ISINGLASS | {"amount_ml": 1000}], 12.5),
        (0, [ISINGLASS | {"amount_ml": 30_000}], None),
    ],
)
def test_sulphite_is_the_beers_own_and_what_finings_carry_in(
    own: int | None, doses: list[dict[str, Any]], total: float | None
) -> None:
    """FINE-5. By hand: 13.9 mL/L x 500 mg/L + 3.475 x 300 = 7.99 (Murphy & Son, upper figures).

    By the rates it is 3.47 mL/L of auxiliary. With the beer's own not known, only what finings
    alone make it declare is known.
    """
    gyle = {} if own is None else {"sulphite_decimg_per_l": own}
    found = sulphites_mg_per_l(holding(*doses), gyle, BEER, LOTS, {})
    assert found == (None if total is None else pytest.approx(total, abs=0.01))
