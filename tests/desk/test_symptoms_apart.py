"""No two signs of one garment and side may look the same: compared as they are painted, dot by dot."""

from __future__ import annotations

from collections import defaultdict
from itertools import combinations

import numpy as np
import numpy.typing as npt
import pytest
from msgspec.structs import replace
from PySide6.QtGui import QImage

from fitdoctor.desk.figure_tones import LIGHT
from fitdoctor.desk.pictures import Pictures
from fitdoctor.figure.choose import figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene, told
from fitdoctor.knowledge.entries import Symptom
from fitdoctor.knowledge.knowledge import Knowledge

SIZE = (120, 176)
SEEN = 8
"Shades of grey, of 255, from which a dot counts as another."
LEAST_DOTS, LEAST_APART = 15, 0.3
"A sign changes so many dots of the picture at least; two differ in this share of all the dots that either of them changes."
Grey = npt.NDArray[np.int16]


def grey(image: QImage) -> Grey:
    plain = image.convertToFormat(QImage.Format.Format_Grayscale8)
    dots = np.frombuffer(bytes(plain.constBits()), dtype=np.uint8)
    return dots.reshape(plain.height(), plain.bytesPerLine())[:, : plain.width()].astype(np.int16)


def shown(knowledge: Knowledge, pictures: Pictures, symptom: Symptom) -> tuple[Grey, Grey] | None:
    """The sign on its garment, and which dots of the garment it changes."""
    garment = symptom.garments[0]
    figure, drawing = figure_of(knowledge, garment, symptom.view), symptom_drawing(knowledge, symptom, garment)
    if figure is None or drawing is None:
        return None
    scene = Scene(replace(figure, wearer=()), (drawing,), facts={"garment": garment})
    bare = Scene(scene.figure, facts=told(scene))
    one, other = (grey(pictures.picture(s, SIZE, 1.0, LIGHT, figure.box)) for s in (scene, bare))
    return one, np.abs(one - other) > SEEN


@pytest.mark.usefixtures("qtbot")
def test_every_sign_is_seen_and_no_two_of_one_garment_and_side_look_alike(knowledge: Knowledge) -> None:
    pictures = Pictures(knowledge.figures)
    groups: dict[tuple[str, str], list[tuple[str, Grey, Grey]]] = defaultdict(list)
    for symptom in knowledge.symptoms.values():
        found = shown(knowledge, pictures, symptom)
        assert found is not None, symptom.id
        assert found[1].sum() >= LEAST_DOTS, symptom.id
        groups[symptom.garments[0], symptom.view].append((symptom.id, *found))
    alike = [
        (one, other)
        for signs in groups.values()
        for (one, dots, changed), (other, others, changes) in combinations(signs, 2)
        if apart(dots, others, changed, changes) < LEAST_APART
    ]
    assert not alike


def apart(one: Grey, other: Grey, changed: Grey, changes: Grey) -> float:
    """The share of the dots that differ, of all that either sign changes."""
    either = changed | changes
    return float(((np.abs(one - other) > SEEN) & either).sum() / either.sum())
