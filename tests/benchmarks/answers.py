"""The typed answers that the reader is timed and fuzzed with: what people write, and what is thrown at it."""

from random import Random

from pressure.problem import Asked, Key, Slip

ASKED = Asked("p", "absolute pressure", "pressure", "psi", "absolute")
# 66 ft of sea water: 44.1 psi absolute (common practice, no source), widened by half a per cent.
KEY = Key(
    ASKED,
    44.1,
    43.88,
    44.32,
    (
        Slip("atmosphere-omitted", "Atmosphere left out", "{typed} is the gauge pressure.", 29.25, 29.55),
        Slip("atmosphere-twice", "Atmosphere added twice", "{typed} has it twice.", 58.5, 59.1),
        Slip("one-added", "One added", "{typed} adds 1, not 14.7.", 30.2, 30.55),
    ),
)

# How often each way of writing turns up in a class is a guess; the plain way leads by far.
_WAYS = (
    *["{:.1f} psi"] * 30,
    *["{:.2f} psi"] * 14,
    *["{:.0f} psi"] * 10,
    *["{:.1f}psi"] * 8,
    *["{:.1f} psia"] * 6,
    *["{:.1f} PSI", "{:.1f} psig", "{:.2f} bar", "{:.2f} ata", "{:.0f} kPa"] * 3,
    *["{:.1f} psi absolute", "{:.1f} psi abs", "{:.1f}", " {:.1f} psi ", "{:.1f} bar g", "{:.2f} atm"] * 2,
    *["{:.0f} 1/2 psi", "{:.0f}½ psi", "+{:.1f} psi", "\u2212{:.1f} psi", "{:.1f} ft"],
)


def ordinary(count: int = 10_000) -> list[str]:
    dice = Random(66)
    texts = [dice.choice(_WAYS).format(dice.uniform(1, 200)) for _ in range(count)]
    return [text.replace(".", ",") if dice.random() < 0.03 else text for text in texts]


_HOSTILE = (
    lambda dice: "9" * dice.randint(65, 5_000),
    lambda dice: "44.1 psi" + " " * dice.randint(57, 5_000),
    lambda dice: "(" * dice.randint(1, 64),
    lambda dice: "9**9**9**9"[: dice.randint(1, 10)],
    lambda dice: f"{dice.randint(1, 9)}e{dice.randint(3, 10 ** dice.randint(1, 40))} psi",
    lambda dice: "".join(chr(dice.randint(1, 0x10FFFF)) for _ in range(dice.randint(1, 64))),
    lambda dice: "".join(dice.choice("½⅓１２３．−\u202e\u00a0\ud800") for _ in range(dice.randint(1, 64))),
    lambda dice: "1" * dice.randint(1, 60) + "/0",
    lambda dice: "1," * dice.randint(1, 32),
    lambda dice: "1 " * dice.randint(1, 32),
    lambda dice: dice.choice(
        ("nan psi", "inf psi", "-inf bar", "1_0 psi", "0x2C psi", "1e psi", "\x00" * 64)
    ),
    lambda dice: "44.1 " + "a" * dice.randint(1, 59),
    lambda dice: "__import__('os').system('" + "x" * dice.randint(0, 30) + "')",
    lambda dice: "".join(dice.choice("0123456789.,/ eE+-psi") for _ in range(dice.randint(1, 64))),
)


def hostile(count: int = 10_000) -> list[str]:
    dice = Random(99)
    return [_HOSTILE[n % len(_HOSTILE)](dice) for n in range(count)]
