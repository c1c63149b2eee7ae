"""Claims and their sources, titles, questions: what a reader stumbles over."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from fitdoctor.knowledge.checks.links import all_entries
from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import Entry
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.references import Path_, references

_DRAWN_BY_US = ("figures",)


@rule("claim-without-source")
def claim_without_source(look: Look) -> Iterator[Finding]:
    """An entry or a link that names no source, not even common practice."""
    for kind, entry in all_entries(look.knowledge):
        if kind in _DRAWN_BY_US:
            continue
        for path in _claims(entry):
            text = "no source is named; where there is none write common-practice"
            yield Finding(kind, entry.id, text, path)


@rule("source-never-used")
def source_never_used(look: Look) -> Iterator[Finding]:
    """A source that no entry cites."""
    used = {id_ for _, entry in all_entries(look.knowledge) for id_ in _cited(entry)}
    for id_ in look.knowledge.sources:
        if id_ not in used:
            yield Finding("sources", id_, f"the source ‘{id_}’ is cited nowhere")


@rule("title-twice")
def two_of_one_title(look: Look) -> Iterator[Finding]:
    """Two entries of one kind with the same title cannot be told apart on the screen."""
    titled: dict[tuple[str, str], list[Entry]] = defaultdict(list)
    for kind, entry in all_entries(look.knowledge):
        if kind != "cases":
            titled[(kind, " ".join(entry.title.casefold().split()))].append(entry)
    for (kind, _), entries in titled.items():
        for entry in entries[1:]:
            yield Finding(kind, entry.id, f"‘{entries[0].id}’ has the same title: {entry.title}", ("title",))


@rule("title-missing")
def title_missing(look: Look) -> Iterator[Finding]:
    """A title of blanks, or one that only repeats the id."""
    for kind, entry in all_entries(look.knowledge):
        if entry.title.strip() in ("", entry.id):
            yield Finding(kind, entry.id, "the title is missing", ("title",))


@rule("question")
def question_without_question_mark(look: Look) -> Iterator[Finding]:
    """A question that does not end in a question mark."""
    for kind, entry in all_entries(look.knowledge):
        ask = getattr(entry, "ask", "").strip()
        if ask and not ask.endswith("?"):
            yield Finding(kind, entry.id, "the question does not end in a question mark", ("ask",))


@rule("formerly")
def id_used_again(look: Look) -> Iterator[Finding]:
    """An id that an entry had before a rename and that another has now."""
    for kind, entry in all_entries(look.knowledge):
        for number, old in enumerate(entry.formerly):
            if old in look.knowledge.kind(kind):
                yield Finding(kind, entry.id, f"‘{old}’ is an entry of its own; an id is never used again", ("formerly", number))


@rule("drawing", on_asking=True)
def drawing_missing(look: Look) -> Iterator[Finding]:
    """A symptom that is not drawn."""
    for symptom in look.knowledge.symptoms.values():
        if not symptom.draw:
            yield Finding("symptoms", symptom.id, "the drawing is missing")


def unsourced(knowledge: Knowledge) -> tuple[tuple[str, str], ...]:
    """(kind, id) of every entry that rests on common practice alone, for a fitter to review."""
    return tuple((kind, entry.id) for kind, entry in knowledge.entries() if _cited(entry) <= {COMMON_PRACTICE})


def _cited(entry: Entry) -> set[str]:
    return {to.id for to in references(entry) if to.kind == "sources"}


def _claims(entry: Entry) -> Iterator[Path_]:
    """Places where a source must stand and none does."""
    if not entry.sources:
        yield ("sources",)
    for name in ("shows_as", "answers", "cloth_needed"):
        claims = getattr(entry, name, ())
        if isinstance(claims, tuple):
            yield from ((name, number) for number, claim in enumerate(claims) if not claim.sources)
