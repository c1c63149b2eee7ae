"""A small knowledge in memory for the tests of the diagnosis."""

from __future__ import annotations

from fitdoctor.knowledge.entries import Answers, Cause, Check, Garment, LiesIn, Method, Shows, Symptom, When
from fitdoctor.knowledge.knowledge import Knowledge

SCALE = {
    "strength": {"nearly-always": 0.95, "usually": 0.8, "often": 0.55, "sometimes": 0.3, "seldom": 0.1},
    "how-common": {"common": 0.12, "fairly-common": 0.06, "uncommon": 0.025, "rare": 0.008},
    "leak": {"leak": 0.01},
}


def symptom(id_: str, view: str = "back", garments: tuple[str, ...] = ("trousers",)) -> Symptom:
    return Symptom(
        id=id_, title=f"Sight of {id_}", garments=garments, view=view, zone="seat", line="fold", runs="level", look="A fold."  # type: ignore[arg-type]
    )


def check(id_: str, minutes: float = 2, needs: str = "wearer", *, at_the_rack: bool = False) -> Check:
    return Check(id=id_, title=id_, ask=f"Does {id_} help?", minutes=minutes, needs=needs, at_the_rack=at_the_rack)  # type: ignore[arg-type]


def cause(
    id_: str,
    shows: dict[str, str],
    answers: dict[str, str] | None = None,
    common: str = "common",
    impossible_if: tuple[When, ...] = (),
    lies_in: LiesIn = "cut",
) -> Cause:
    return Cause(
        id=id_,
        title=f"Cause {id_}",
        lies_in=lies_in,
        how_common={"trousers": common},
        why="The cloth sinks.",
        shows_as=tuple(Shows(symptom=s, strength=word, sources=("book",)) for s, word in shows.items()),
        answers=tuple(Answers(check=c, yes=word, sources=("book",)) for c, word in (answers or {}).items()),
        impossible_if=impossible_if,
    )


def method(id_: str, treats: tuple[str, ...]) -> Method:
    return Method(id=id_, title=id_, treats=treats, garments=("trousers",), stage="waist")


def small_knowledge() -> Knowledge:
    """Two rivals for the same folds (long, flat) that a check parts; a third fault at the hem; nothing wrong."""
    causes = (
        cause("long", {"folds": "usually", "drag": "sometimes"}, {"pin": "nearly-always"}),
        cause("flat", {"folds": "usually", "bag": "often"}, {"pad": "nearly-always"}, impossible_if=(When(fact="lining", is_=("full",)),)),
        cause("short", {"hem-up": "nearly-always"}, {"tape": "usually"}, common="fairly-common"),
        cause("creases", {"bag": "often"}, {"sit": "usually"}, lies_in="none"),
    )
    symptoms = (symptom("folds"), symptom("bag"), symptom("drag", "front"), symptom("hem-up", "side"))
    checks = (check("pin"), check("pad", 10), check("tape", needs="garment"), check("sit", at_the_rack=True))
    methods = (method("lower-waist", ("long",)), method("take-in-back", ("flat",)), method("let-down", ("short",)))
    return Knowledge(
        garments={"trousers": Garment(id="trousers", title="Trousers")},
        symptoms={entry.id: entry for entry in symptoms},
        causes={entry.id: entry for entry in causes},
        checks={entry.id: entry for entry in checks},
        methods={entry.id: entry for entry in methods},
        scale=SCALE,
    )
