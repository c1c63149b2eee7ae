"""How long a search takes, beside a plain scan: `python -m tests.knowledge.bench_search`. Not a test; no time is promised by a test."""

from __future__ import annotations

import random
from collections.abc import Callable
from statistics import median
from time import perf_counter
from typing import Any

from fitdoctor.knowledge.entries import Symptom
from fitdoctor.knowledge.filters import Filter
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.search import SearchIndex
from fitdoctor.knowledge.stems import stems

TIMES = 25
WORDS_SAID = 12


def made_up(number: int) -> Knowledge:
    """So many signs of words that mean nothing."""
    say = _Speaker()
    where: dict[str, Any] = {"view": "back", "zone": "seat", "line": "fold", "runs": "level", "garments": ("skirt",)}
    made = [
        Symptom(id=f"s{n}", title=say.some(5), look=say.some(18), also_called=tuple(say.some(3) for _ in range(6)), **where)
        for n in range(number)
    ]
    return Knowledge(symptoms={symptom.id: symptom for symptom in made})


class _Speaker:
    """Says words by chance, the same ones every time."""

    def __init__(self) -> None:
        self._chance = random.Random(7)
        self._words = ["".join(self._chance.choices("aeioulnrst", k=self._chance.randint(4, 9))) for _ in range(3000)]

    def some(self, number: int) -> str:
        return " ".join(self._chance.choices(self._words, k=number))


def plain_scan(knowledge: Knowledge, said: str) -> list[str]:
    """The baseline: every entry read through for the words that were said."""
    wanted = set(stems(said))
    texts = {s.id: " ".join((s.title, s.look, *s.also_called)) for s in knowledge.symptoms.values()}
    shared = {id_: len(wanted & set(stems(text))) for id_, text in texts.items()}
    return sorted((id_ for id_, both in shared.items() if both), key=lambda id_: -shared[id_])


def _median_ms(run: Callable[[str], object], said: list[str]) -> float:
    took = []
    for text in said:
        start = perf_counter()
        run(text)
        took.append(perf_counter() - start)
    return 1000 * median(took)


def main() -> None:
    """Print milliseconds a search among a thousand entries."""
    knowledge, say = made_up(1000), _Speaker()
    index = SearchIndex(knowledge)
    only = Filter("symptoms", garment="skirt")
    one = [say.some(WORDS_SAID)[:-1] for _ in range(TIMES)]
    several = [", ".join(say.some(WORDS_SAID // 3) for _ in range(3)) for _ in range(TIMES)]
    print(f"plain scan           {_median_ms(lambda said: plain_scan(knowledge, said), one):6.1f} ms")
    print(f"search               {_median_ms(lambda said: index.search(said, most=400), one):6.1f} ms")
    print(f"search, filtered     {_median_ms(lambda said: index.search(said, only, most=400), one):6.1f} ms")
    print(f"search, three faults {_median_ms(lambda said: index.search(said, most=400), several):6.1f} ms")
    print(f"browse               {_median_ms(lambda _: index.browse(only), one):6.1f} ms")


if __name__ == "__main__":
    main()
