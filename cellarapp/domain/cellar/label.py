"""LABEL: what a label says of strength and allergens, and what must stand on the cask itself."""

from typing import Any

from cellarapp.domain.cellar.asked import CellarAsked
from cellarapp.domain.figures import Settings
from cellarapp.domain.inputs import Inputs, choice_of
from cellarapp.domain.rounding import half_up_whole
from cellarapp.domain.working import Worked, Working

CEREAL_WHY = "Each cereal containing gluten is named."
MOST_CEREALS = 10
FINED_WHY = "Whether isinglass was used."
MILK_WHY = "Whether milk or lactose is in it."


def strength_words(abv_tenths: int) -> str:
    """LABEL-1: at most one decimal, and the sign the law gives."""
    whole, tenth = abv_tenths // 10, abv_tenths % 10
    return f"Alc. {whole}.{tenth} % vol"


def cereals_of(work: Working, asked: CellarAsked) -> list[str]:
    """The cereals that were given, each once, in the order of the list of the law."""
    known = work.figure("label_cereals")
    given = [
        choice_of(f"cereals[{n}]", cereal, known, CEREAL_WHY)
        for n, cereal in enumerate(asked.parts("cereals", MOST_CEREALS, "cereals"))
    ]
    return [cereal for cereal in known if cereal in given]


def sulphites_declared(work: Working, asked: CellarAsked) -> bool:
    """LABEL-2: above 10 mg/L; exactly 10 is not. Not given, a caution says so."""
    limit = work.figure("sulphite_declared_above_mg_per_l")
    if not asked.has("sulphites_mg_per_l"):
        work.caution("sulphites_not_known")
        return False
    found = asked.number("sulphites_mg_per_l")
    work.step("Sulphites, declared above the limit", found, "mg/L", 1)
    return bool(found > limit)


def label(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LABEL-3: the words for strength and allergens.

    Isinglass is exempt as an allergen and is not declared; it still makes a beer not vegan.
    Asked: abv_tenths, cereals, milk, isinglass; sulphites_mg_per_l. Twin: label.ts.
    """
    fields = ("abv_tenths", "cereals", "milk", "isinglass", "sulphites_mg_per_l")
    asked, work = CellarAsked(inputs, *fields), Working(settings)
    strength = asked.whole("abv_tenths")
    needed = strength > work.figure("strength_labelled_above_abv_tenths")
    work.step("Strength", strength / 10, "% vol", 1)
    contains = [f"{cereal} (gluten)" for cereal in cereals_of(work, asked)]
    milk, isinglass = asked.flag("milk", MILK_WHY), asked.flag("isinglass", FINED_WHY)
    if milk:
        contains.append("milk")
    if sulphites_declared(work, asked):
        contains.append("sulphites")
    if isinglass:
        work.caution("fined_is_not_vegan")
    work.caution("check_food_law")
    result: dict[str, Any] = {
        "strength_words": strength_words(strength),
        "strength_needed": needed,
        "contains": contains,
        "contains_words": f"Contains {', '.join(contains)}" if contains else "",
        "may_be_vegan": not milk and not isinglass,
        "on_the_cask": work.figure("cask_label_particulars"),
    }
    return work.done(result)


def label_strength(inputs: Inputs, settings: Settings | None = None) -> Worked:
    """LABEL-4: whether a label's strength is near enough to the true one.

    Up to 5.5 % vol half a per cent either way, above it one. Where label and true strength lie on
    either side of that the stricter counts, and a difference is flagged. Hundredths decide.
    """
    asked, work = CellarAsked(inputs, "label_abv_tenths", "measured_abv"), Working(settings)
    label_hundredths = asked.whole("label_abv_tenths") * 10
    true_hundredths = half_up_whole(asked.number("measured_abv") * 100)
    rows = work.figure("strength_label_tolerance")

    def row(hundredths: int) -> int:
        stronger = hundredths > rows["beer_up_to_abv_tenths"] * 10
        name = "stronger_within_abv_hundredths" if stronger else "within_abv_hundredths"
        return int(rows[name])

    by_label, by_true = row(label_hundredths), row(true_hundredths)
    off = abs(label_hundredths - true_hundredths)
    work.step("Off by = |label - true|", off / 100, "% vol", 2)
    work.step("Allowed, the stricter row", min(by_label, by_true) / 100, "% vol", 2)
    unsettled = (off <= by_label) != (off <= by_true)
    if unsettled:
        work.caution("strength_row_unsettled")
    return work.done(
        {
            "within": off <= min(by_label, by_true),
            "unsettled": unsettled,
            "allowed_abv": min(by_label, by_true) / 100,
            "off_by_abv": off / 100,
        }
    )
