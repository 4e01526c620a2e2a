"""Every name of the made-up brewery. None is meant to be that of a real house, beer or person."""

from typing import Any

OWNER, DRIVER, BARHAND = "Brindle", "Tollo", "Wix"

PLACES: dict[str, dict[str, str]] = {
    "racking": {"name": "Racking room", "role": "store"},
    "cold": {"name": "Cold room", "role": "store"},
    "stillage": {"name": "Stillage", "role": "stillage"},
    "bar": {"name": "Bar", "role": "bar"},
    "yard": {"name": "Yard", "role": "yard"},
}

BEERS: list[dict[str, Any]] = [
    {"name": "Low Wicket Mild", "abv_tenths": 34, "style": "Mild", "best_before_days": 28},
    {"name": "Clattergate Bitter", "abv_tenths": 38, "style": "Bitter", "best_before_days": 28},
    {"name": "Tindlemoss Pale", "abv_tenths": 42, "style": "Pale ale"},
    {"name": "Owlbarrow Best", "abv_tenths": 45, "style": "Best bitter"},
    {"name": "Sprocket Wheat", "abv_tenths": 41, "style": "Wheat beer"},
    {"name": "Hallowmire Porter", "abv_tenths": 52, "style": "Porter", "conditioning_days": 10},
    {"name": "Brackenlode Stout", "abv_tenths": 58, "style": "Stout", "conditioning_days": 10},
    {"name": "Old Mumbletrunk", "abv_tenths": 72, "style": "Old ale", "conditioning_days": 14},
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

PHONE = "01632 960{:03d}"
"""Numbers that are kept free for plays and films, so that no demo rings anybody."""

CHASES = [
    "rang, spoke to the landlord", "left word with the kitchen", "rang twice, no answer",
    "says they are by the back door", "will have them out for the van",
]  # fmt: skip
