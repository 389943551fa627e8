"""The misunderstandings behind wrong options: one name and one label for each, as for slips of number."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from pressure.problem import Option

LABELS: Mapping[str, str] = MappingProxyType(
    {
        "wrong-direction": "the right space, but the difference runs the other way",
        "ways-swapped": "the way down and the way up were swapped",
        "other-space": "an open space was blamed",
        "blames-depth-alone": "the depth alone was blamed",
        "blames-speed-alone": "the speed alone was blamed",
        "equal-because-breathing": "supplied air was taken to reach a closed space",
        "closed-taken-for-open": "a closed space was taken to be open",
        "yielding-taken-for-stiff": "a wall that yields was taken for a stiff one",
        "fuller-breath": "a fuller breath was taken to help",
        "absolute-for-difference": "an absolute pressure was used for the difference",
        "stiff-wall-gives": "the stiff wall was taken to give before the soft tissue",
        "surface-breath-for-compressed": "a breath from the surface was taken for one from the set",
        "read-as-pneumothorax": "the signs were read as gas in the chest cavity",
        "read-as-mediastinal-emphysema": "the signs were read as gas behind the breastbone",
        "read-as-subcutaneous-emphysema": "the signs were read as gas under the skin of the neck",
        "read-as-gas-embolism": "the signs were read as gas in the arteries",
    }
)


def wrong(name: str, text: str, why: str, *, told_apart: str = "") -> Option:
    """A wrong option. ``told_apart`` ends its name where a prompt has several of one misunderstanding."""
    return Option(f"{name}-{told_apart}" if told_apart else name, text, why, LABELS[name])


def right(text: str, why: str) -> Option:
    """The right option."""
    return Option("right", text, why)
