"""What was said, as terms: the words themselves, other words for them, the words a slip or half a word may stand for."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from rapidfuzz import process
from rapidfuzz.distance import DamerauLevenshtein

from fitdoctor.knowledge.stems import EMPTY, stem, stems, words

Term = tuple[str, ...]
"""Stems that mean one thing together: back waist."""

_SYNONYM, _BACKWARD = 0.75, 0.35
_BEGUN, _LONGER = 0.85, 0.4
_NEAR = 0.72
_LONGEST_PHRASE = 4


@dataclass(frozen=True)
class Vocabulary:
    """The words that lead somewhere.

    Attributes:
        stem_of: every word of the entries -> its stem.
        other_words: term -> terms that may stand for it, with how surely.
    """

    stem_of: Mapping[str, str]
    other_words: Mapping[Term, Mapping[Term, float]]

    @classmethod
    def of(cls, texts: Iterable[str], lay: Mapping[str, tuple[str, ...]]) -> Vocabulary:
        """The words of these texts, and lay words with the words of the trade for them."""
        return cls({word: stem(word) for text in texts for word in words(text) if word not in EMPTY}, _other_words(lay))

    def concepts(self, said: str) -> Iterator[dict[Term, float]]:
        """Each thing that was said, as terms with how well they stand for it."""
        spoken = words(said)
        place = 0
        while place < len(spoken):
            phrase = self._phrase_at(spoken, place)
            place += len(phrase)
            begun = place == len(spoken) and said[-1:].isalnum()
            if len(phrase) > 1 or phrase[0] not in EMPTY or (begun and len(phrase[0]) > 2):
                yield self._terms(phrase, begun)

    @cached_property
    def _stems(self) -> frozenset[str]:
        return frozenset(self.stem_of.values())

    def _phrase_at(self, spoken: list[str], place: int) -> list[str]:
        """The longest phrase from here that other words are known for; else the one word."""
        for length in range(_LONGEST_PHRASE, 1, -1):
            phrase = spoken[place : place + length]
            if _stemmed(phrase) in self.other_words:
                return phrase
        return spoken[place : place + 1]

    def _terms(self, phrase: list[str], begun: bool) -> dict[Term, float]:
        fits: dict[Term, float] = {(stem(word),): 1.0 for word in phrase if word not in EMPTY} or {(stem(phrase[-1]),): 1.0}
        for other, fit in self.other_words.get(_stemmed(phrase), {}).items():
            fits.setdefault(other, fit)
        if begun and len(phrase[-1]) > 1:
            fit = _LONGER if phrase[-1] in self.stem_of else _BEGUN
            for word, its_stem in self.stem_of.items():
                if word.startswith(phrase[-1]):
                    fits.setdefault((its_stem,), fit)
        if not any(word in self._stems for term in fits for word in term):
            fits.update(self._near(phrase[-1]))
        return fits

    def _near(self, word: str) -> dict[Term, float]:
        """Known words that this one may be a slip for."""
        if len(word) < 4:
            return {}
        known = self.stem_of.keys()
        found = process.extract(word, known, scorer=DamerauLevenshtein.normalized_similarity, score_cutoff=_NEAR, limit=4)
        return {(self.stem_of[near],): fit * fit for near, fit, _ in found}


def _stemmed(phrase: Iterable[str]) -> Term:
    return tuple(map(stem, phrase))


def _other_words(lay: Mapping[str, tuple[str, ...]]) -> dict[Term, dict[Term, float]]:
    """Phrase -> terms that may stand for it; from lay to trade, and less surely back."""
    found: dict[Term, dict[Term, float]] = defaultdict(dict)
    for phrase, trade in lay.items():
        said = _stemmed(words(phrase))
        for term in trade:
            found[said][tuple(stems(term))] = _SYNONYM
            if len(said) == 1:
                found[_stemmed(words(term))].setdefault(said, _BACKWARD)
    return dict(found)
