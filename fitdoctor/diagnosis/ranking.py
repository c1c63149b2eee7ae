"""What a diagnosis is made of."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from fitdoctor.diagnosis.case_net import CaseNet
from fitdoctor.diagnosis.posterior import Posterior
from fitdoctor.reason import Reason

Kind = Literal["symptom", "check"]
YesNo = Literal["yes", "no"]

_CHANCES = ((0.9, "nearly certain"), (0.6, "likely"), (0.3, "may be"), (0.1, "less likely"), (0.0, "hardly"))
RULED_OUT = "ruled out"
_WEIGHTS = ((2.0, "strongly"), (0.7, "somewhat"), (0.0, "slightly"))


def chance_word(chance: float) -> str:
    """A chance as one of the fixed words."""
    return next(word for least, word in _CHANCES if chance >= least)


def weight_word(nats: float) -> str:
    """How strongly a finding speaks: strongly multiplies the odds by 7 or more, somewhat doubles them."""
    return next(word for least, word in _WEIGHTS if abs(nats) >= least)


@dataclass(frozen=True)
class Finding:
    """A symptom looked for, or a check answered: yes (seen) or no (looked for and not there)."""

    finding: str
    kind: Kind
    title: str
    answer: YesNo


@dataclass(frozen=True)
class Evidence(Finding):
    """What one finding does to one cause.

    Attributes:
        weight: by how much the log-odds of the cause (nats) change through it, all other findings kept.
        word: strongly, somewhat, slightly.
        linked: False where it works only through a rival: what explains it, or fails to, is another cause.
    """

    weight: float
    word: str
    linked: bool = True


@dataclass(frozen=True)
class NotLooked:
    """A symptom not looked for yet, or a check not answered, that this cause would show."""

    finding: str
    kind: Kind
    title: str
    strength: float


@dataclass(frozen=True)
class RankedCause:
    """One cause with its chance and what speaks for and against it.

    Attributes:
        probability: that it is present, 0 to 1; word: the same in words.
        because: why the cloth would do that, then each finding that led here.
        speaks_for, speaks_against: the weightiest finding first.
        ruled_out: why it cannot be; None where it can.
    """

    id: str
    title: str
    probability: float
    word: str
    because: tuple[Reason, ...]
    speaks_for: tuple[Evidence, ...] = ()
    speaks_against: tuple[Evidence, ...] = ()
    not_looked: tuple[NotLooked, ...] = ()
    ruled_out: Reason | None = None


@dataclass(frozen=True)
class Explanation:
    """A set of causes that accounts for all that is seen, and the chance that it is exactly these; empty: nothing known here."""

    causes: tuple[str, ...]
    probability: float


@dataclass(frozen=True)
class Diagnosis:
    """The causes by likelihood: those that could bring on what is seen, then those of which nothing shows, the ruled-out ones last.

    Attributes:
        explanations: likeliest first; they say nothing of causes under 1 in 20.
        note: what the reader has to know besides: an estimate, a sight no cause explains.
        findings: what was used, as yes or no.
        net, posterior: the numbers behind it, for the next check.
    """

    causes: tuple[RankedCause, ...]
    explanations: tuple[Explanation, ...]
    note: str
    findings: tuple[Finding, ...]
    net: CaseNet = field(repr=False, compare=False)
    posterior: Posterior = field(repr=False, compare=False)

    def cause(self, id_: str) -> RankedCause | None:
        """The ranked cause of this id, None where the garment does not have it."""
        return next((cause for cause in self.causes if cause.id == id_), None)
