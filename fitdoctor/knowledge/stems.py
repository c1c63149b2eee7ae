"""Words down to their stems, so that pulls, pulled and pulling find the same entries."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

_WORD = re.compile(r"[a-z0-9]+(?:'[a-z]+)?")
_VOWELS = frozenset("aeiouy")
_SAME = """
center:centre color:colour gray:grey fiber:fibre armscye:armhole zipper:zip fabric:cloth material:cloth
"""
_SPELLED = dict(pair.split(":") for pair in _SAME.split())
"""American spelling, and words that mean exactly the same."""

_SAY_NOTHING = """
a about after all also although am an and any anything are as at be because been being bit bits but by can cannot could did do does
doesn't don't dont each either every everything for from get gets getting goes going got had has have having he her hers herself him his
how i i'm i've if in into is it it's its itself just keep keeps kept like look looks me mine more most much my myself no nor not now of
on one only or other our quite rather really right s she should shown shows showing so some something still such t than that the their
them then there these they they're thing things this those to very was we were what when where which while who whole why will with
without won't would you your
"""
EMPTY = frozenset(_SAY_NOTHING.split())
"""Words that say nothing about a garment. Up, down, off, out and too stay: they do."""


def words(text: str) -> list[str]:
    """The words of a text, small, plain and in British spelling."""
    plain = unicodedata.normalize("NFKD", text.replace("’", "'").replace("‘", "'")).encode("ascii", "ignore").decode().lower()
    return [_SPELLED.get(word, word) for word in _WORD.findall(plain)]


def stems(text: str) -> list[str]:
    """The stems of the words that say something.

    >>> stems("The collar is pulling away")
    ['collar', 'pull', 'away']
    """
    return [stem(word) for word in words(text) if word not in EMPTY]


@lru_cache(maxsize=20_000)
def stem(word: str) -> str:
    """A word without its endings; rough, but the same for all forms of a word.

    >>> stem("baggy"), stem("bags"), stem("bagging"), stem("gaping"), stem("gapes")
    ('bag', 'bag', 'bag', 'gap', 'gap')
    """
    word = word.split("'")[0]
    if len(word) <= 3:
        return word
    for ending, instead, least in _ENDINGS:
        left = word.removesuffix(ending)
        if left != word and len(left) >= least and _VOWELS & set(left):
            word = left + instead
            break
    return _bare(word)


_ENDINGS = (
    ("sses", "ss", 2),
    ("ches", "ch", 2),
    ("shes", "sh", 2),
    ("xes", "x", 2),
    ("ies", "y", 2),
    ("iness", "y", 2),
    ("ness", "", 3),
    ("ings", "", 3),
    ("ing", "", 3),
    ("edly", "", 3),
    ("ed", "", 3),
    ("ly", "", 4),
    ("ss", "ss", 1),
    ("us", "us", 1),
    ("s", "", 3),
)


def _bare(word: str) -> str:
    """Without a final e or y, and without the consonant doubled before it."""
    if len(word) > 3 and word[-1] in "ey" and word[-2] not in "aeou":
        word = word[:-1]
    if len(word) > 3 and word[-1] == word[-2] and word[-1] not in "aeiouls":
        word = word[:-1]
    return word
