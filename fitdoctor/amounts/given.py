"""What a calculator is given, and the frame that makes a calculator out of a function."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from fitdoctor.amounts.carry import from_block
from fitdoctor.amounts.marks import Calculation, Calculator, Length, Take
from fitdoctor.errors import FitdoctorError


@dataclass(frozen=True)
class Given:
    """The inputs and words of one calculation; a length not given comes from the standard block and says so."""

    lengths: Mapping[str, Length]
    words: Mapping[str, str]
    block: Mapping[str, float]
    choices: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @property
    def total(self) -> Length:
        return self.lengths["total"]

    def length(self, name: str) -> Length:
        """An input that is needed, or has a stand-in."""
        if name in self.lengths:
            return self.lengths[name]
        if name in _BY_CUSTOM:
            return Length(self.block[name])
        return from_block(self.block[name], f"the {_CALLED.get(name, name.replace('-', ' '))}")

    def measured(self, name: str) -> Length | None:
        """An input without a stand-in; None where it was not measured."""
        return self.lengths.get(name)

    def word(self, name: str) -> str:
        """An option; where not given its first allowed value, or the word in the brackets of an open one."""
        return self.words.get(name) or self.choices[name][0]

    @property
    def in_or_out(self) -> Take:
        """The option take of a seam that is taken in or let out."""
        return "in" if self.word("take") == "in" else "out"

    def number(self, name: str) -> int:
        """An option that is a whole number."""
        return int(self.word(name))


Formula = Callable[[Given], Calculation]
_RUN_ALONG = ("along", "half-width", "half-neck-width", "back-neck-depth", "half-shoulder", "half-hem", "seat-seam")
"Sizes that cannot be 0, besides all that end in length."
_BY_CUSTOM = (
    *("step", "stop", "seam", "join-seam", "facing-seam", "new-hem", "inside-less", "front-less", "apart", "parts", "edge-slope"),
    *("button-from-edge", "button-spacing"),
)
"Sizes that the one who works decides on: their usual value stands in for nothing that could be measured."
_CALLED = {
    "length": "length of the seam",
    "along": "waist seam from the centre to the side",
    "half-width": "part of the crotch curve that is to move",
    "half-neck-width": "half width of the back neck",
    "half-shoulder": "back neckline from its centre to the shoulder seam",
    "half-hem": "hem from crease to crease",
    "slant": "slant of the hem",
}
"What to measure where the name of the input alone does not say it."
OPEN = ("", "any")
"Marks an option whose values are not a closed list; its usual value stands before."


def open_option(usual: str) -> tuple[str, ...]:
    """An option that takes any word."""
    return (usual, *OPEN)


def calculator(
    name: str,
    formula: Formula,
    *,
    needs: tuple[str, ...] = ("total",),
    block: Mapping[str, float] | None = None,
    optional: tuple[str, ...] = (),
    effects: tuple[str, ...] = (),
    options: Mapping[str, tuple[str, ...]] | None = None,
) -> Calculator:
    """A calculator that refuses nonsense before it works anything out.

    Raises (on use):
        FitdoctorError: a negative length, a size of 0, an unknown word, or a needed input missing.
    """
    sizes, choices = dict(block or {}), dict(options or {})
    known = {*needs, *sizes, *optional}

    def work_out(inputs: Mapping[str, Length], options: Mapping[str, str]) -> Calculation:
        _refuse_unknown(name, inputs, options, known, needs, choices)
        for input_, length in inputs.items():
            _refuse_impossible(input_, length, must_be_there=input_ in _RUN_ALONG or input_.endswith("length"))
        return formula(Given(inputs, options, sizes, choices))

    shown = {option: () if values[1:] == OPEN else values for option, values in choices.items()}
    return Calculator(name, work_out, needs, sizes, effects, shown, optional)


def _refuse_unknown(
    name: str,
    inputs: Mapping[str, Length],
    options: Mapping[str, str],
    known: set[str],
    needs: tuple[str, ...],
    choices: Mapping[str, tuple[str, ...]],
) -> None:
    for input_ in inputs:
        if input_ not in known and not input_.startswith("limit-"):
            raise FitdoctorError(f"‘{name}’ has no input ‘{input_}’.", f"It takes: {', '.join(sorted(known))}.")
    for input_ in needs:
        if input_ not in inputs:
            raise FitdoctorError(f"‘{name}’ needs ‘{input_}’.", "Measure it first.")
    for option, word in options.items():
        if option not in choices:
            raise FitdoctorError(f"‘{name}’ has no option ‘{option}’.", f"It takes: {', '.join(sorted(choices)) or 'none'}.")
        values = choices[option]
        if values[1:] != OPEN and word not in values:
            raise FitdoctorError(f"‘{word}’ is no value of ‘{option}’ of ‘{name}’.", f"It takes: {', '.join(values)}.")


def _refuse_impossible(name: str, length: Length, must_be_there: bool) -> None:
    if length.mm < 0:
        raise FitdoctorError(f"The {name.replace('-', ' ')} is below 0.", "Turn the direction of the work round instead.")
    if must_be_there and length.mm == 0:
        raise FitdoctorError(f"The {name.replace('-', ' ')} is 0: there is nothing to mark along.", "Measure it again.")
