"""How an amount runs along a seam: even, running out at one end or both, or starting from nothing; the words for it too."""

from __future__ import annotations

from dataclasses import dataclass

from fitdoctor.amounts.curves import even, in_and_out, run_out
from fitdoctor.amounts.given import Given, open_option
from fitdoctor.amounts.marking import Shape

_FULL_SHARE = 0.35
"An amount that starts from nothing at the waist and is held from the hip down is all there at this share of the way."
SHAPES: tuple[str, ...] = ("even", "tapered", "waist", "flared", "held")


@dataclass(frozen=True)
class Run:
    """The share of an amount left along the way, how that is said, what lies at either end."""

    shape: Shape
    words: str
    ends: tuple[str, str]


def run_options(usual: str = "even", top: str = "at the top", foot: str = "at the lower end") -> dict[str, tuple[str, ...]]:
    """The options of a calculator whose amount runs along a seam: the shape, and its places in words with their preposition."""
    shapes = (usual, *(shape for shape in SHAPES if shape != usual))
    return {"shape": shapes, "top": open_option(top), "full-at": open_option("at the waist"), "foot": open_option(foot)}


def run_of(given: Given) -> Run:
    """How the amount runs, by the options.

    even: the same all the way. tapered: all of it at the top, nothing at the foot. flared: the other way round. waist: nothing at either
    end, all of it half way. held: nothing at the top, all of it at a third of the way and from there to the foot.
    """
    kind, top, full, foot = (given.word(option) for option in ("shape", "top", "full-at", "foot"))
    shape, words = {
        "even": (even, f"even {_from(top)} to {_bare(foot)}" if given.words.keys() & {"top", "foot"} else "even all along"),
        "tapered": (run_out, f"{top}, running out to nothing {foot}"),
        "flared": (_flared, f"{foot}, running out to nothing {top}"),
        "waist": (in_and_out(0.5), f"{full}, running out to nothing {top} and {foot}"),
        "held": (_held, f"{_from(full)} to {_bare(foot)}, starting from nothing {top}"),
    }[kind]
    return Run(shape, words, (_bare(top, article=False), _bare(foot, article=False)))


def _flared(share: float) -> float:
    return run_out(1 - share)


def _held(share: float) -> float:
    return run_out(1 - share / _FULL_SHARE)


def _from(place: str) -> str:
    return f"from {place.removeprefix('at ')}"


def _bare(place: str, article: bool = True) -> str:
    bare = place.removeprefix("at ")
    return bare if article else bare.removeprefix("the ")
