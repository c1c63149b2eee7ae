"""Pictures beside a question and beside its answers."""

from __future__ import annotations

from typing import cast

from fitdoctor.desk.job import Job, drawn
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.line_choice import Picture
from fitdoctor.figure.choose import figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.diagrams import check_diagram
from fitdoctor.knowledge.entries import Symptom, View
from fitdoctor.rack.question import RackQuestion


def question_picture(job: Job, look: Look, question: RackQuestion, garment: str) -> Picture | None:
    """The side to look over, or how a check is done; None where nothing is drawn for it."""
    know, tones = job.knowledge, look.tones
    if question.kind == "check":
        diagram = check_diagram(know, know.checks[question.id], garment)
        return drawn(job, diagram, tones) if diagram else None
    figure = figure_of(know, garment, cast(View, question.id)) if question.kind == "side" else None
    if figure is None:
        return None
    scene = Scene(figure, facts={"garment": garment})
    return lambda size, dpr: job.pictures.picture(scene, size, dpr, tones)


def answer_pictures(job: Job, look: Look, question: RackQuestion, garment: str) -> dict[str, Picture]:
    """What the answers look like, by value, where symptoms are to choose from."""
    if question.kind != "symptom":
        return {}
    symptoms = (job.knowledge.symptoms[one.value] for one in question.answers)
    return {one.id: symptom_picture(job, look, one, garment) for one in symptoms if symptom_drawing(job.knowledge, one, garment)}


def symptom_picture(job: Job, look: Look, symptom: Symptom, garment: str) -> Picture:
    """A symptom as it looks on this garment."""
    return lambda size, dpr: job.pictures.symptom(job.knowledge, symptom, garment, size, dpr, look.tones)
