"""Find entries by what people say: lay words, typing slips, half a word."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import log, sqrt

from fitdoctor.knowledge.entries import Entry
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.passages import SAYS_MUCH, garments_of, names_of, passages_of
from fitdoctor.knowledge.spoken import Term, Vocabulary
from fitdoctor.knowledge.stems import stem, words

_OF_KIND = {"symptoms": 1.3, "causes": 1.0, "methods": 0.95, "checks": 0.85, "garments": 0.7}
_OTHER_KINDS = 0.85
_OTHER_GARMENT, _OTHER_THAT_SPEAKS_OF_IT = 0.35, 0.8
_PASSAGE_SHARE = 1.0
_EXACT = 6
_MOST_STRAYS = 20


@dataclass(frozen=True)
class Hit:
    """One find.

    Attributes:
        score: how well it fits, the higher the better; comparable within one search only.
        why: the words of the entry that fit best.
    """

    id: str
    kind: str
    title: str
    score: float
    why: str


def search(knowledge: Knowledge, said: str, kind: str | None = None, garment: str | None = None, most: int = 12) -> tuple[Hit, ...]:
    """One search; whoever searches more than once keeps a `SearchIndex`."""
    return SearchIndex(knowledge).search(said, kind, garment, most)


@dataclass(frozen=True)
class _Meant:
    """The kinds of garment that were named, and the stems of the words that named them."""

    kinds: frozenset[str]
    stems: frozenset[str]


class SearchIndex:
    """All entries by the stems of their words."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._entries: list[tuple[str, Entry]] = list(knowledge.entries())
        self._passages = [p for number in range(len(self._entries)) for p in passages_of(knowledge, number, self._entries[number][1])]
        self._in_passages: dict[str, list[int]] = defaultdict(list)
        self._in_entries: dict[str, dict[int, float]] = defaultdict(dict)
        for number, passage in enumerate(self._passages):
            for word in passage.stems:
                self._in_passages[word].append(number)
                heaviest = self._in_entries[word].get(passage.entry, 0.0)
                self._in_entries[word][passage.entry] = max(heaviest, passage.weight)
        self._rarity = {word: log(1 + len(self._entries) / len(inside)) for word, inside in self._in_entries.items()}
        self._lengths = [sqrt(sum(self._rarity[word] ** 2 for word in p.stems)) or 1.0 for p in self._passages]
        self._vocabulary = Vocabulary.of((passage.text for passage in self._passages), knowledge.words)
        self._garment_words = self._names_of_garments()

    def search(self, said: str, kind: str | None = None, garment: str | None = None, most: int = 12) -> tuple[Hit, ...]:
        """The best finds, best first.

        Args:
            said: words as typed; the last one may be half a word.
            kind: only symptoms, causes, checks, …
            garment: only what holds for this garment.
        """
        concepts = list(self._vocabulary.concepts(said))
        scores, best = self._scores(concepts)
        meant = self._meant(said)
        hits = (
            self._hit(number, score * self._fitting(number, meant), best.get(number))
            for number, score in scores.items()
            if self._wanted(number, kind, garment)
        )
        return tuple(sorted(hits, key=lambda hit: (-hit.score, hit.title))[:most])

    def _wanted(self, number: int, kind: str | None, garment: str | None) -> bool:
        of, entry = self._entries[number]
        return (kind is None or of == kind) and (garment is None or self._knowledge.suits(garments_of(of, entry), garment))

    def _hit(self, number: int, score: float, passage: int | None) -> Hit:
        kind, entry = self._entries[number]
        why = "" if passage is None else self._passages[passage].text
        return Hit(entry.id, kind, entry.title, round(score * _OF_KIND.get(kind, _OTHER_KINDS), 4), why)

    def _scores(self, concepts: Iterable[Mapping[Term, float]]) -> tuple[dict[int, float], dict[int, int]]:
        """Score by entry: how much of what was said it has anywhere, and how closely its best passage says the same."""
        whole, close = _Tally(), _Tally()
        length = sqrt(sum(self._weigh(terms, whole, close) for terms in concepts)) or 1.0
        closest: dict[int, tuple[float, int]] = {}
        for number, score in close.sums().items():
            passage = self._passages[number]
            alike = min(1.0, score / (length * self._lengths[number]))
            fit = passage.weight * alike * (1 + alike**_EXACT)
            if fit > closest.get(passage.entry, (0.0, 0))[0]:
                closest[passage.entry] = fit, number
        scores = {e: s / length**1.5 + _PASSAGE_SHARE * closest.get(e, (0.0, 0))[0] for e, s in whole.sums().items()}
        return scores, {entry: number for entry, (_, number) in closest.items()}

    def _weigh(self, terms: Mapping[Term, float], whole: _Tally, close: _Tally) -> float:
        """Add one thing that was said, in whichever of its terms fits best; return its own weight squared."""
        of_entry: dict[int, tuple[float, Term]] = {}
        of_passage: dict[int, tuple[float, Term]] = {}
        for term, fit in terms.items():
            _keep_greater(of_entry, self._term_in_entries(term), fit, term)
            _keep_greater(of_passage, self._term_in_passages(term), fit, term)
        whole.add(of_entry)
        close.add(of_passage)
        return max((fit * self._rarity.get(word, 0.0) for term, fit in terms.items() for word in term), default=0.0) ** 2

    def _term_in_entries(self, term: Term) -> Mapping[int, float]:
        found: dict[int, float] = defaultdict(float)
        for word in term:
            weight = self._rarity.get(word, 0.0) / sqrt(len(term))
            for entry, heaviest in self._in_entries.get(word, {}).items():
                found[entry] += weight * heaviest
        return found

    def _term_in_passages(self, term: Term) -> Mapping[int, float]:
        found: dict[int, float] = defaultdict(float)
        for word in term:
            weight = self._rarity.get(word, 0.0) ** 2 / sqrt(len(term))
            for passage in self._in_passages.get(word, ()):
                found[passage] += weight
        return found

    def _names_of_garments(self) -> dict[str, set[str]]:
        """Word -> garments it names; one that the entries of others use freely (the top of the sleeve) names none."""
        named: dict[str, set[str]] = defaultdict(set)
        for garment in self._knowledge.garments.values():
            for word in names_of(garment):
                named[word].add(garment.id)
        return {word: garments for word, garments in named.items() if self._strays(word, garments) <= _MOST_STRAYS}

    def _strays(self, word: str, garments: set[str]) -> int:
        kinds = frozenset(kind for garment in garments for kind in self._knowledge.kinds_of(garment))
        return sum(not self._holds_for(number, kinds) for number in self._in_entries.get(stem(word), ()))

    def _holds_for(self, number: int, kinds: frozenset[str]) -> bool:
        garments = garments_of(*self._entries[number])
        return not garments or not kinds.isdisjoint(garments)

    def _meant(self, said: str) -> _Meant:
        """The garments named in what was said, with the kinds of them; and the words that named them."""
        naming = [word for word in words(said) if word in self._garment_words]
        kinds = {kind for word in naming for garment in self._garment_words[word] for kind in self._knowledge.kinds_of(garment)}
        return _Meant(frozenset(kinds), frozenset(map(stem, naming)))

    def _fitting(self, number: int, meant: _Meant) -> float:
        """Less for another garment's entry, not so much less where it speaks of the one that was named (a jacket over a shirt collar)."""
        if not meant.kinds or self._holds_for(number, meant.kinds):
            return 1.0
        speaks = any(self._in_entries.get(word, {}).get(number, 0.0) >= SAYS_MUCH for word in meant.stems)
        return _OTHER_THAT_SPEAKS_OF_IT if speaks else _OTHER_GARMENT


class _Tally:
    """Scores that add up over the words they come from; a word that two things said both lead to counts once."""

    def __init__(self) -> None:
        self._of: dict[int, dict[Term, float]] = defaultdict(dict)

    def add(self, scores: Mapping[int, tuple[float, Term]]) -> None:
        for number, (score, term) in scores.items():
            words_of = self._of[number]
            words_of[term] = max(words_of.get(term, 0.0), score)

    def sums(self) -> dict[int, float]:
        return {number: sum(of.values()) for number, of in self._of.items()}


def _keep_greater(kept: dict[int, tuple[float, Term]], found: Mapping[int, float], fit: float, term: Term) -> None:
    for number, score in found.items():
        if number not in kept or fit * score > kept[number][0]:
            kept[number] = fit * score, term
