"""What must not be altered for people's safety, whatever the work: said beside every advice to buy."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from fitdoctor.case import Case
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.when import Truth, holds


@dataclass(frozen=True)
class Caution:
    """A no-go for safety that nobody has ruled out.

    Attributes:
        condition: id; title: what is meant.
        needs: what must be so before anything is altered.
        how: how it is seen at the rack.
        because: why; instead: what to do in place of altering.
    """

    condition: str
    title: str
    needs: str
    how: str
    because: str
    instead: str
    sources: tuple[str, ...]


def safety_cautions(knowledge: Knowledge, case: Case) -> tuple[Caution, ...]:
    """The no-goes for safety that hold for all work on this garment and are not known to be met."""
    return tuple(_cautions(knowledge, case))


def _cautions(knowledge: Knowledge, case: Case) -> Iterator[Caution]:
    for id_, condition in sorted(knowledge.conditions.items()):
        when = condition.when
        stops = condition.safety and condition.effect == "forbids" and condition.applies_to.all
        if not stops or when is None or not knowledge.suits(condition.garments, case.garment):
            continue
        if holds(when, case, None, knowledge) != Truth.FALSE:
            how = condition.at_the_rack or condition.ask
            yield Caution(id_, condition.title, condition.needs, how, condition.because, condition.instead, condition.sources)
