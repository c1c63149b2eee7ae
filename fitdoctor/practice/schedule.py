"""When a skill comes back: spaced repetition (FSRS) over what was answered.

The cards are worked out from the answers each time, so that the answers are all that is kept and nothing can disagree with them.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from fsrs import Card, Rating, Scheduler, State

from fitdoctor.practice.exercise import Mark
from fitdoctor.practice.progress import Answered, confused_pair

RATINGS: dict[Mark, Rating] = {"right": Rating.Good, "part": Rating.Hard, "wrong": Rating.Again}
_SCHEDULER = Scheduler(enable_fuzzing=False)
"""The library's own parameters; no chance in it, so that the same answers always give the same days."""


@dataclass(frozen=True)
class Schedule:
    """The card of every skill met, by its key."""

    cards: dict[str, Card]

    @classmethod
    def of(cls, answers: Iterable[Answered]) -> Schedule:
        """The schedule after these answers, gone through in order of time.

        An answer reviews its skill; a mistake that names a look-alike brings the pair up as a skill of its own.
        """
        cards: dict[str, Card] = {}
        for answer in sorted(answers, key=lambda answer: answer.when):
            _review(cards, answer.skill, RATINGS[answer.mark], answer.when)
            mixed_up = confused_pair(answer)
            if mixed_up is not None and mixed_up.key != answer.skill:
                _review(cards, mixed_up.key, Rating.Again, answer.when)
        return cls(cards)

    def due(self, now: datetime) -> tuple[str, ...]:
        """The skills to be had again by now, those waiting longest first."""
        waiting = [(card.due, key) for key, card in self.cards.items() if card.due <= now.astimezone(UTC)]
        return tuple(key for _, key in sorted(waiting))

    def comes_back(self, skill: str) -> datetime | None:
        """When a skill comes back; None where it was never met."""
        card = self.cards.get(skill)
        return card.due if card else None

    @property
    def settled(self) -> dict[str, bool]:
        """Whether each skill has left the first steps and was not lost again."""
        return {key: card.state == State.Review for key, card in self.cards.items()}


def in_words(due: datetime, now: datetime) -> str:
    """When something comes back, as one says it."""
    days = (due.astimezone().date() - now.astimezone().date()).days
    if days <= 0:
        minutes = max(1, round((due - now) / timedelta(minutes=1)))
        return "in a minute" if minutes == 1 else f"in {minutes} minutes" if minutes < 90 else "later today"
    return "tomorrow" if days == 1 else f"in {days} days"


def _review(cards: dict[str, Card], key: str, rating: Rating, at: datetime) -> None:
    card = cards.get(key) or Card(card_id=len(cards) + 1, due=at)
    cards[key], _ = _SCHEDULER.review_card(card, rating, at)
