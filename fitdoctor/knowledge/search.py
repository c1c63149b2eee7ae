"""Find entries by what people say: lay words, typing slips, half a word."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import log, sqrt

from fitdoctor.knowledge.entries import Entry, Source, Symptom
from fitdoctor.knowledge.filters import Facets, Filter
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.passages import SAYS_MUCH, Passage, garments_of, names_of, passages_of, passages_of_source
from fitdoctor.knowledge.several import brought_together, parts_of
from fitdoctor.knowledge.spoken import Term, Vocabulary
from fitdoctor.knowledge.stems import stem, words

EVERYTHING = Filter()

_OF_KIND = {"symptoms": 1.3, "causes": 1.0, "methods": 0.95, "checks": 0.85, "garments": 0.7, "sources": 0.6}
_OTHER_KINDS = 0.85
_BROWSED = ("symptoms", "causes", "methods", "conditions", "checks", "measurements", "features", "garments", "sources")
_OTHER_GARMENT, _OTHER_THAT_SPEAKS_OF_IT = 0.35, 0.8
_PASSAGE_SHARE = 1.0
_EXACT = 6
_MOST_STRAYS = 20
_LOOSE, _TIGHT, _SURELY = {(stem("loose"),)}, {(stem("tight"),)}, 0.7
_OPPOSITE, _UNLIKE = 0.6, 0.9


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


def search(knowledge: Knowledge, said: str, only: Filter = EVERYTHING, most: int = 12) -> tuple[Hit, ...]:
    """One search; whoever searches more than once keeps a `SearchIndex`."""
    return SearchIndex(knowledge).search(said, only, most)


_Indexed = tuple[str, str, Entry | Source]
"""Kind, id, and what bears it."""


@dataclass(frozen=True)
class _Meant:
    """The kinds of garment that were named, and the stems of the words that named them."""

    kinds: frozenset[str]
    stems: frozenset[str]


class SearchIndex:
    """All entries and sources by the stems of their words."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self.facets = Facets(knowledge)
        cited = [("sources", id_, source) for id_, source in knowledge.sources.items() if id_ != COMMON_PRACTICE]
        self._entries: list[_Indexed] = [*((kind, entry.id, entry) for kind, entry in knowledge.entries()), *cited]
        self._passages = [p for number in range(len(self._entries)) for p in self._passages_of(number)]
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

    def search(self, said: str, only: Filter = EVERYTHING, most: int = 12) -> tuple[Hit, ...]:
        """The best finds, best first; of several faults in one breath the best of each stand near the top.

        Args:
            said: words as typed; the last one may be half a word.
            only: what may be found.
        """
        meant = self._meant(said)
        scores, best = self._fits(said, meant, only)
        parts = parts_of(said)
        if len(parts) > 1:
            scores = brought_together(scores, [self._fits(part, meant, only)[0] for part in parts])
        hits = (self._hit(number, score, best.get(number)) for number, score in scores.items())
        return tuple(sorted(hits, key=lambda hit: (-hit.score, hit.title))[:most])

    def browse(self, only: Filter) -> tuple[Hit, ...]:
        """Everything that passes a filter, from what shows to the sources, each kind by title."""
        passing = self.facets.passing(only)
        hits = (Hit(id_, kind, entry.title, 0.0, "") for kind, id_, entry in self._entries if (kind, id_) in passing)
        return tuple(sorted(hits, key=lambda hit: (_BROWSED.index(hit.kind), hit.title.lower())))

    def _passages_of(self, number: int) -> Iterable[Passage]:
        _, id_, entry = self._entries[number]
        return passages_of_source(number, id_, entry) if isinstance(entry, Source) else passages_of(self._knowledge, number, entry)

    def _fits(self, said: str, meant: _Meant, only: Filter) -> tuple[dict[int, float], dict[int, int]]:
        """Score by entry that may be found, for its kind and the garment that is meant; and its best passage."""
        concepts = list(self._vocabulary.concepts(said))
        against = _lines_against(concepts)
        scores, best = self._scores(concepts)
        passing = self.facets.passing(only) if only else None
        wanted = (n for n in scores if passing is None or self._entries[n][:2] in passing)
        return {n: scores[n] * self._worth(n, meant) * against.get(_line_of(self._entries[n][2]), 1.0) for n in wanted}, best

    def _worth(self, number: int, meant: _Meant) -> float:
        return self._fitting(number, meant) * _OF_KIND.get(self._entries[number][0], _OTHER_KINDS)

    def _hit(self, number: int, score: float, passage: int | None) -> Hit:
        kind, id_, entry = self._entries[number]
        return Hit(id_, kind, entry.title, round(score, 4), "" if passage is None else self._passages[passage].text)

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
        kind, _, entry = self._entries[number]
        garments = () if isinstance(entry, Source) else garments_of(kind, entry)
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


def _lines_against(concepts: Iterable[Mapping[Term, float]]) -> Mapping[str, float]:
    """Lines that speak against what was said: what is loose does not strain, and what is tight seldom hangs in folds."""
    said = {term for terms in concepts for term, fit in terms.items() if fit >= _SURELY}
    loose, tight = not said.isdisjoint(_LOOSE), not said.isdisjoint(_TIGHT)
    if loose == tight:
        return {}
    return {"strain": _OPPOSITE} if loose else {"fold": _UNLIKE, "droop": _UNLIKE}


def _line_of(entry: Entry | Source) -> str:
    return entry.line if isinstance(entry, Symptom) else ""


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
