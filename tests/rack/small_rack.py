"""A knowledge small enough to work through by hand: one sight, two causes, one of which cannot be cured."""

from __future__ import annotations

from dataclasses import replace

import msgspec

from fitdoctor.knowledge.entries import (
    Answers,
    Cause,
    Check,
    Condition,
    Effect,
    Feature,
    FeatureValue,
    Garment,
    Method,
    Operation,
    Shows,
    Symptom,
    When,
    Zone,
)
from fitdoctor.knowledge.knowledge import Knowledge

SCALE = {
    "strength": {"nearly-always": 0.95, "usually": 0.8, "often": 0.55, "sometimes": 0.3, "seldom": 0.1},
    "how-common": {"common": 0.12},
    "leak": {"leak": 0.01},
}
SOURCES = ("common-practice",)


def small_knowledge(effect: Effect = "forbids") -> Knowledge:
    """Strain at the hip of a skirt: too tight (let out where the seams hold cloth), or the cloth has shrunk (no cure).

    The check tells the two apart; the feature tells whether it can be let out. Both are told at the rack.
    """
    return Knowledge(
        garments={"skirt": Garment(id="skirt", title="Skirt", zones=(Zone(id="hip", title="Hip", view="back"),))},
        features={"seams": _seams()},
        symptoms={
            "strain": Symptom(
                id="strain",
                title="Strain at the hip",
                garments=("skirt",),
                view="back",
                zone="hip",
                line="strain",
                runs="level",
                look="Lines.",
            )
        },
        causes={
            "tight": _cause("tight", "seldom"),
            "shrunk": _cause("shrunk", "nearly-always", "Shrunk cloth does not come back."),
        },
        checks={"stiff": Check(id="stiff", title="Stiff", ask="Is the cloth stiff?", minutes=0.5, needs="garment", at_the_rack=True)},
        methods={
            "let-out": Method(
                id="let-out",
                title="Let out the sides",
                treats=("tight",),
                garments=("skirt",),
                stage="girth",
                operations=(Operation(id="sew", do="Let out.", minutes=(30, 60, 90)),),
                conditions=("seams-hold",),
                sources=SOURCES,
            ),
            "buy-larger": Method(
                id="buy-larger",
                title="Take the larger size",
                kind="other-garment",
                treats=("tight",),
                garments=("skirt",),
                stage="girth",
                because="A waist is easily taken in.",
                rank=90,
                sources=SOURCES,
            ),
        },
        conditions={
            "seams-hold": Condition(
                id="seams-hold",
                title="Seams hold cloth",
                effect=effect,
                needs="The seams hold cloth",
                when=When(fact="seams", is_=("none",)),
                because="A seam moves out only where there is cloth.",
                at_the_rack="Turn the seam out.",
                minutes=(20, 30, 40),
                sources=SOURCES,
            )
        },
        scale=SCALE,
    )


def without_check(knowledge: Knowledge) -> Knowledge:
    """The same where nothing tells the two causes apart."""
    bare = {id_: _without_answers(cause) for id_, cause in knowledge.causes.items()}
    return replace(knowledge, causes=bare, checks={})


def _without_answers(cause: Cause) -> Cause:
    return msgspec.structs.replace(cause, answers=())


def _cause(id_: str, stiff: str, no_method: str = "") -> Cause:
    return Cause(
        id=id_,
        title=f"The skirt is {id_}",
        lies_in="size",
        how_common={"skirt": "common"},
        why="Cloth that is short is pulled.",
        shows_as=(Shows(symptom="strain", strength="usually", sources=SOURCES),),
        answers=(Answers(check="stiff", yes=stiff, sources=SOURCES),),
        no_method=no_method,
        sources=SOURCES,
    )


def _seams() -> Feature:
    return Feature(
        id="seams",
        title="Seams",
        ask="Is there cloth in the seams?",
        garments=("skirt",),
        values=(FeatureValue(id="some", title="Some"), FeatureValue(id="none", title="None")),
        usual="some",
        at_the_rack="Turn the seam out.",
        seconds=5,
    )
