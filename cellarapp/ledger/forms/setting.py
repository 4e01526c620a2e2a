"""What a brewery may set: a figure's value, or the values of one that is a list, in its range."""

from typing import Any

from marshmallow import ValidationError, validates_schema

from cellarapp.domain.errors import OutOfRange
from cellarapp.domain.figures import FIGURES, MILLIONTHS, setting, setting_list
from cellarapp.ledger.forms.form import Form


class SettingForm(Form):
    """A whole entry that sets a figure or a text; a figure is held to its own range."""

    @validates_schema
    def within_its_range(self, entry: dict[str, Any], **_: Any) -> None:
        """Refuse what every rule that uses it would refuse. Raises: ValidationError."""
        name, facts = entry["subject"], entry["facts"]
        known = FIGURES.get(name)
        if known is None or "low" not in known:
            return  # a text, or a figure that nobody sets
        fact = "values_millionths" if "least" in known else "value_millionths"
        given = facts.get(fact)
        if given is None:
            return
        try:
            if isinstance(given, list):
                setting_list(name, {name: [one / MILLIONTHS for one in given]})
            else:
                setting(name, {name: given / MILLIONTHS})
        except OutOfRange as refusal:
            low, high, unit, why = (refusal.facts[one] for one in ("low", "high", "unit", "why"))
            said = f"{fact} of {name} must be from {low} to {high} {unit}, in millionths. {why}"
            raise ValidationError({"facts": {fact: [said]}}) from refusal
