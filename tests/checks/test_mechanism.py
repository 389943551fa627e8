"""What published sources say of squeezes and of torn lungs, against the model of air spaces.

Edmonds et al. was read in a web copy (frommed.com) that does not name it; the attribution is inferred.
"""

import pytest
from scipy import constants

from pressure.airspaces.harmless import ALL
from pressure.airspaces.injuries import ESCAPES, INJURIES
from pressure.airspaces.model import onset, outcome
from pressure.airspaces.spaces import SPACES
from pressure.airspaces.telling import case, named_in
from pressure.airspaces.trips import Trip

NAVY = "US Navy Diving Manual, Revision 4 Change A"
EDMONDS = "Edmonds et al., Diving and Subaquatic Medicine"
MSD = "MSD Manual, Barotrauma, 2023"
PRACTICE = "common practice, no source"
BY_NAME = {each.name: each for each in ALL}
METRES, FEET = named_in("metric"), named_in("us")

INJURIES_SAID = [
    (
        "ear-cold",
        "outside",
        "middle-ear-squeeze",
        f"{NAVY}, p. 19-9: squeeze; DAN, middle-ear barotrauma: the drum bulges inwards",
    ),
    ("ear-plugs", "outside", "outer-ear-squeeze", f"{EDMONDS}: plugs, the drum bulges outwards"),
    ("ear-hood", "outside", "outer-ear-squeeze", f"{EDMONDS}: tight hoods"),
    ("sinus-cold", "outside", "sinus-squeeze", f"{EDMONDS}: a blocked opening"),
    ("tooth-hollow-down", "outside", "tooth-squeeze", f"{NAVY}, p. 19-9: air in a filling"),
    ("mask-forgotten", "outside", "face-squeeze", f"{NAVY}, p. 19-9: no nasal exhalation"),
    ("goggles", "outside", "face-squeeze", f"{EDMONDS}: goggles, almost inevitable"),
    ("mask-valve-missing", "outside", "face-squeeze", f"{EDMONDS}, figure 9.2: no non-return valve"),
    ("suit-fold", "outside", "suit-squeeze", f"{NAVY}, p. 19-9: air under a fold"),
    ("helmet-valve-fails", "outside", "body-squeeze", PRACTICE),
    ("helmet-fall", "outside", "body-squeeze", PRACTICE),
    ("helmet-valve-holds", None, "none", PRACTICE),
    ("lungs-deep", "outside", "lung-squeeze", "Encyclopaedia Britannica, thoracic squeeze"),
    ("ear-spray", "inside", "middle-ear-reverse", f"{NAVY}, §19-4.1.2: trapped gas expands on ascent"),
    ("sinus-polyp", "inside", "sinus-reverse", f"{NAVY}, §19-4.1.2: the same in a sinus"),
    ("lungs-held", "inside", "lung-overexpansion", f"{MSD}: breath held during ascent"),
    ("lungs-mucus", "inside", "lung-overexpansion", f"{MSD}: diseased areas of the lung"),
    ("lungs-supplied", None, "none", f"{PRACTICE}: supplied air has the pressure of the water at the chest"),
    ("ear-cleared", None, "none", f"{PRACTICE}: a difference arises only where a space is closed"),
    (
        "lungs-return",
        None,
        "none",
        f"{MSD}: it is compressed air, not a breath from the surface, that doubles",
    ),
    ("canals-wet", None, "none", f"{EDMONDS}: water enters the canal and equalises it"),
]


@pytest.mark.parametrize(("name", "side", "injury", "source"), INJURIES_SAID, ids=lambda each: str(each))
def test_what_comes_of_it_is_what_the_source_says(name, side, injury, source):
    for system in ("us", "metric"):
        for trip in range(6):
            assert outcome(*case(system, BY_NAME[name], trip)[:3])[::2] == (side, injury), source


# Where harm begins, with nothing but the conversions of scipy: 64 lb/ft³ and 1025 kg/m³ as sea water.
def feet_of(mercury):
    return mercury * constants.mmHg / (64 * constants.lb * constants.g / constants.foot**2)


def metres_of(pascals):
    return pascals / (1025 * constants.g)


ONSETS = [
    ("lungs-held", METRES, 0.7, 1.1, f"{MSD}: as little as 1 m; IAFF 90 cmH2O; recalled 70 to 110 cmH2O"),
    ("lungs-held", FEET, 2.2, 3.6, f"{MSD}: 3 to 4 ft in a pool; a bench model 4 ft (2008)"),
    ("ear-cold", FEET, feet_of(60), feet_of(500), "pain near 60 mmHg, rupture up to 500 mmHg: recalled"),
    ("ear-plugs", METRES, 2.0, metres_of(500 * constants.mmHg), f"{EDMONDS}: from 150 mmHg, 2 m of water"),
    (
        "lungs-deep",
        METRES,
        28,
        47,
        "OpenStax A&P 2e, §22.3, ratios 3.8 to 5: 28 to 40 m, and the ear's range",
    ),
    ("lungs-deep", FEET, 92, 155, "the same in feet: 93 to 132 ft, and the ear's range"),
]


@pytest.mark.parametrize(("name", "named", "soonest", "latest", "source"), ONSETS)
def test_harm_begins_within_what_is_published(name, named, soonest, latest, source):
    down = BY_NAME[name].trips != "up"
    trip = Trip(0, 220) if down else Trip(100, 0)
    found = onset(BY_NAME[name], trip, named)
    assert found.soonest == pytest.approx(soonest, rel=0.03), source
    assert found.latest == pytest.approx(latest, rel=0.03), source


def test_deaths_on_an_ascent_of_less_than_two_metres_lie_within_the_onset():
    """James PB, J R Coll Physicians Lond 27:367 (1993), abstract."""
    assert onset(BY_NAME["lungs-held"], Trip(30, 0), METRES).latest < 2.0


def test_the_shallow_end_of_a_pool_is_deep_enough_to_tear_a_held_lung():
    """MSD Manual, Barotrauma, 2023: 3 to 4 ft below the surface."""
    held = BY_NAME["lungs-held"]
    assert outcome(held, Trip(4, 0), FEET).injury == "lung-overexpansion"
    assert outcome(held, Trip(1, 0), FEET).injury == "none"


def test_lungs_tear_at_the_overpressures_of_the_published_range():
    """70 to 110 cmH2O, recalled; the conversion by scipy."""
    begins = SPACES["lungs"].blown.begins
    water = [each * constants.mmHg / (10 * constants.g) for each in begins]
    assert water == pytest.approx([70, 110], rel=0.02)


SAID_OF = [
    (
        "middle-ear-squeeze",
        "response",
        ("stop", "go up a few feet", "never with force"),
        f"{NAVY}, §19-4.1.1",
    ),
    ("middle-ear-reverse", "response", ("Stop", "2 to 4 ft", "slowly and in stages"), f"{NAVY}, §19-4.1.2"),
    ("sinus-squeeze", "prevention", ("not dive", "stuffed"), f"{NAVY}, §19-4.1.3"),
    ("middle-ear-squeeze", "signs", ("cold water", "dizziness"), "Atlas of Emergency Medicine, 5e, 2021"),
    ("face-squeeze", "signs", ("lids", "whites of the eyes"), "Therapeutic Guidelines, diving medicine"),
    ("mediastinal-emphysema", "signs", ("dull ache", "deep breath", "swallowing"), f"{NAVY}, §19-3.1"),
    ("subcutaneous-emphysema", "signs", ("voice", "crackles"), f"{NAVY}, §19-3.1.1"),
    ("pneumothorax", "signs", ("one side", "short breath"), "Merck Manual, Pulmonary barotrauma"),
    ("pneumothorax", "response", ("worse", "ascent"), MSD),
    ("gas-embolism", "signs", ("ten minutes", "stroke", "collapse"), "board-review text, p. 666"),
    ("gas-embolism", "response", ("oxygen", "recompression"), "ANZCOR Guideline 9.3.5"),
]


@pytest.mark.parametrize(("name", "part", "words", "source"), SAID_OF)
def test_signs_and_first_response_hold_what_the_source_has(name, part, words, source):
    text = getattr(INJURIES[name], part).lower()
    assert all(word.lower() in text for word in words), source


def test_gas_from_a_torn_lung_has_four_ways():
    """US Navy Diving Manual, §19-3, and MSD Manual name these four."""
    titles = " ".join(INJURIES[each].title for each in ESCAPES)
    assert all(word in titles for word in ("chest cavity", "breastbone", "skin of the neck", "arteries"))
    assert len(ESCAPES) == 4
