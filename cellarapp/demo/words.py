"""Every name of the made-up brewery. None is meant to be that of a real house, beer or person."""

from typing import Any

from cellarapp.domain.roles import Role

OWNER, DRIVER, BARHAND = "Brindle", "Tollo", "Wix"
PEOPLE: dict[str, Role] = {OWNER: "owner", DRIVER: "driver", BARHAND: "cellar"}

BREWERY: dict[str, Any] = {
    "name": "Sallowick Brewery",
    "address": "2 Ropewalk, Sallowick",
    "phone": "01632 960099",
    "email": "office@brewery.example",
    "web": "https://casks.example",
    "map": {"latitude_e6": 55_000_000, "longitude_e6": 3_000_000},
}
"""It lies far out at sea, as its villages do: nobody is sent to a real door."""
PLACES: dict[str, dict[str, Any]] = {
    "racking": {"name": "Racking room", "role": "store"},
    "cold": {"name": "Cold room", "role": "store", "temp_decidegc": 115},
    "stillage": {"name": "Stillage", "role": "stillage", "temp_decidegc": 120},
    "bar": {"name": "Bar", "role": "bar"},
    "yard": {"name": "Yard", "role": "yard"},
}

FINED = {
    "target_co2_centivols": 140, "priming_sugar": "sucrose", "syrup_g_per_l": 1000,
    "keg_co2_centivols": 220,
    "auxiliary": "auxiliary_silica", "auxiliary_ml_per_hl": 220, "isinglass_ml_per_hl": 850,
    "vegan": False, "cereals": ["barley"], "milk": False,
}  # fmt: skip
"""Rates are of the usual order; in a real brewery every gyle's own trial decides."""
UNFINED = {
    "auxiliary": "none", "auxiliary_ml_per_hl": 0, "isinglass_ml_per_hl": 0, "vegan": True,
}  # fmt: skip
DARK = {"conditioning_days": 10, "cereals": ["barley", "oats"]}


def _beer(name: str, style: str, abv_tenths: int, limit_e4: int, **more: Any) -> dict[str, Any]:
    said = {"name": name, "style": style, "abv_tenths": abv_tenths, "limit_gravity_e4": limit_e4}
    return FINED | said | more


BEERS = [
    _beer("Low Wicket Mild", "Mild", 34, 10_090),
    _beer("Clattergate Bitter", "Bitter", 38, 10_075),
    _beer("Tindlemoss Pale", "Pale ale", 42, 10_065, hops_g_per_hl=40),
    _beer("Owlbarrow Best", "Best bitter", 45, 10_085),
    _beer("Sprocket Wheat", "Wheat beer", 41, 10_080, **UNFINED | {"cereals": ["barley", "wheat"]}),
    _beer("Hallowmire Porter", "Porter", 52, 10_120, **DARK),
    _beer("Brackenlode Stout", "Stout", 58, 10_140, **DARK),
    _beer("Old Mumbletrunk", "Old ale", 72, 10_180, conditioning_days=14),
]
"""What a beer leaves out here is filled in from its strength by `beer_days`."""

TURN = [1, 2, 3, 1, 5, 2, 4, 1, 3, 6, 2, 0, 1, 3, 2, 7]
"""Which beer is brewed week after week: the bitter most, the old ale once in sixteen weeks."""

CUSTOMERS: list[dict[str, str]] = [
    {"name": "The Quivering Ladle, Ostlethwick", "contact": "Ned at the hatch", "is": "prompt"},
    {"name": "The Left-Handed Kettle, Tarrowby", "contact": "Ottoline", "is": "prompt"},
    {"name": "The Fiddler's Turnip, Nether Quill", "contact": "kitchen door", "is": "prompt"},
    {"name": "The Penny Gantry, Ostlethwick", "contact": "Gam", "is": "prompt"},
    {"name": "The Unlikely Heron, Fennock Lode", "contact": "Perdy", "is": "prompt"},
    {"name": "The Sleeping Bellows, Much Wobbling", "contact": "Hux", "is": "steady"},
    {"name": "The Crooked Trivet, Tarrowby", "contact": "Sal", "is": "steady"},
    {"name": "The Borrowed Anvil, Stannick", "contact": "Merrin", "is": "steady"},
    {"name": "The Thimble and Goose, Stannick", "contact": "ask for Joss", "is": "steady"},
    {"name": "The Winking Lamprey, Fennock Lode", "contact": "Dilly", "is": "steady"},
    {"name": "The Paper Windmill, Nether Quill", "contact": "Ro", "is": "steady"},
    {"name": "The Sunken Bandstand, Grimbleford", "contact": "Tam", "is": "steady"},
    {"name": "Grimbleford Bowls and Quoits Club", "contact": "steward", "is": "steady"},
    {"name": "The Thirsty Surveyor, Much Wobbling", "contact": "Vesper", "is": "steady"},
    {"name": "The Mended Lantern Jug, Stannick", "contact": "Ivo", "is": "slow"},
    {"name": "The Hesitant Ferryman, Fennock Lode", "contact": "Bryn at the jetty", "is": "slow"},
    {"name": "The Last Spoke, Tarrowby", "contact": "Nan", "is": "slow"},
    {"name": "The Idle Wheelwright, Grimbleford", "contact": "Cass", "is": "slow"},
    {"name": "Ostlethwick Players' Bar", "contact": "front of house", "is": "slow"},
    {"name": "The Forgetful Beadle, Pobble End", "contact": "Orris", "is": "keeper"},
    {"name": "Pobble End Farm Shop", "contact": "Thea", "is": "keeper"},
    {"name": "Quill Valley Wholesale", "contact": "warehouse", "is": "lots"},
    {"name": "The Gilded Colander, Pobble End", "contact": "cellar bell", "is": "lots"},
    {"name": "Nether Quill Ale Weekend", "contact": "the committee", "is": "festival"},
    {"name": "Stannick Cricket and Kite Club", "contact": "groundsman", "is": "festival"},
]

VILLAGES = {
    "Ostlethwick": (55_021_000, 3_044_000),
    "Tarrowby": (54_982_000, 3_071_000),
    "Nether Quill": (55_057_000, 2_958_000),
    "Fennock Lode": (54_949_000, 2_973_000),
    "Much Wobbling": (55_004_000, 2_902_000),
    "Stannick": (54_931_000, 3_058_000),
    "Grimbleford": (55_089_000, 3_037_000),
    "Pobble End": (55_036_000, 3_129_000),
    "Quill Valley": (55_071_000, 2_931_000),
}
"""Latitude and longitude in millionths of a degree. Each customer's name says where it is."""

PHONE = "01632 960{:03d}"
"""Numbers that are kept free for plays and films, so that no demo rings anybody."""

CHASES = [
    "rang, spoke to the landlord", "left word with the kitchen", "rang twice, no answer",
    "says they are by the back door", "will have them out for the van",
]  # fmt: skip
