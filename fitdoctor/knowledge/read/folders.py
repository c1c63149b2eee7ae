"""Folders of YAML become knowledge: every entry checked against its record, all problems reported in one run."""

from __future__ import annotations

import re
import warnings
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from importlib.resources import files
from pathlib import Path
from typing import Any

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import KINDS, Entry, Region, SolvedCase, Source
from fitdoctor.knowledge.knowledge import Knowledge, Place, Problem
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.read.document import HAS_LIBYAML, Document, read_document
from fitdoctor.knowledge.read.records import record

Progress = Callable[[int, int], bool]
"""(files read, files in all) -> go on?"""

DEMO = "demo"
_WORD_FILES = ("sources.yaml", "scale.yaml", "words.yaml", "regions.yaml")
_FOLDERS = (*KINDS, "sources", DEMO)
_ID_LINE = re.compile(r"^id\s*:", re.MULTILINE)


def shipped_folder() -> Path:
    """The knowledge that comes with the program: inside the wheel, or beside the package in a checkout."""
    package = Path(str(files("fitdoctor")))
    inside = package / "shipped" / "knowledge"
    return inside if inside.is_dir() else package.parent / "knowledge"


def demo_files() -> tuple[Path, ...]:
    """The case files of the demo, in order.

    Raises:
        FitdoctorError: there are none.
    """
    found = tuple(_yaml_files(shipped_folder() / DEMO))
    if not found:
        raise FitdoctorError("The demo cases are missing.", "Install the program again.")
    return found


def read_knowledge(folders: Sequence[Path], progress: Progress | None = None) -> Knowledge:
    """Read folders of knowledge; a later one lies over the earlier: the same id replaces, a new id adds.

    What is sound is kept; what is not stands in `problems`, each with its file and line.

    Raises:
        FitdoctorError: a folder is not there, or `progress` said stop.
    """
    if not HAS_LIBYAML:
        warnings.warn("PyYAML has no libyaml here, so the knowledge is read about six times slower.", RuntimeWarning, stacklevel=2)
    work = [(folder, path) for folder in folders for path in _entry_files(folder)]
    knowledge = Knowledge()
    done = 0
    for folder in folders:
        layer = _Layer(folder)
        layer.read_words()
        for path in [path for of, path in work if of == folder]:
            layer.read_entry(path)
            done += 1
            if progress and not progress(done, len(work)):
                raise FitdoctorError("Reading the knowledge was stopped.", "Start the program again to read it.")
        knowledge = layer.over(knowledge)
    return knowledge


def read_solved_cases(knowledge: Knowledge, folder: Path) -> Knowledge:
    """The same knowledge with the solved cases of this folder in place of its own.

    Raises:
        FitdoctorError: there is no such folder.
    """
    if not folder.is_dir():
        raise FitdoctorError(f"There is no folder {folder}.", "Name a folder of solved cases.")
    layer = _Layer(folder)
    for path in _yaml_files(folder):
        layer.read_as(path, "cases", SolvedCase)
    places = {at: place for at, place in knowledge.places.items() if at[0] != "cases"} | layer.places
    return replace(knowledge, cases=layer.kinds["cases"], places=places, problems=(*knowledge.problems, *layer.problems))


def _yaml_files(folder: Path) -> Iterator[Path]:
    yield from sorted(path for path in folder.rglob("*") if path.suffix in (".yaml", ".yml") and path.is_file())


def _entry_files(folder: Path) -> Iterator[Path]:
    if not folder.is_dir():
        raise FitdoctorError(f"There is no folder of knowledge at {folder}.", "Name another in the settings, or leave the setting empty.")
    for kind in KINDS:
        yield from _yaml_files(folder / kind)


@dataclass
class _Layer:
    """One folder while it is read."""

    folder: Path
    kinds: dict[str, dict[str, Any]] = field(default_factory=lambda: {kind: {} for kind in KINDS})
    sources: dict[str, Source] = field(default_factory=dict)
    scale: dict[str, dict[str, float]] = field(default_factory=dict)
    words: dict[str, tuple[str, ...]] = field(default_factory=dict)
    regions: dict[str, Region] = field(default_factory=dict)
    places: dict[tuple[str, str], Place] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)

    def over(self, below: Knowledge) -> Knowledge:
        """This folder laid over what was read before it."""
        return replace(
            below,
            **{kind: {**getattr(below, kind), **entries} for kind, entries in self.kinds.items()},
            sources={**below.sources, **self.sources},
            scale={kind: {**below.scale.get(kind, {}), **self.scale.get(kind, {})} for kind in (*below.scale, *self.scale)},
            words={**below.words, **self.words},
            regions={**below.regions, **self.regions},
            places={**below.places, **self.places},
            problems=(*below.problems, *self.problems),
        )

    def read_words(self) -> None:
        """Sources, the scale of chances, lay words, regions; and what lies here that has no place here."""
        self.problems += _strangers(self.folder)
        for path in (self.folder / "sources.yaml", *_yaml_files(self.folder / "sources")):
            document = read_document(path) if path.exists() else None
            if document:
                self._take_sources(document)
        self.scale = self._mapping("scale.yaml", dict[str, dict[str, float]])
        self.words = self._mapping("words.yaml", dict[str, tuple[str, ...]])
        self.regions = self._mapping("regions.yaml", dict[str, Region])

    def read_entry(self, path: Path) -> None:
        """One entry; its kind is the folder it lies in."""
        kind = path.relative_to(self.folder).parts[0]
        self.read_as(path, kind, KINDS[kind])

    def read_as(self, path: Path, kind: str, wanted: type[Entry]) -> None:
        """One entry of a kind known beforehand; of two with one id the first stays."""
        document = read_document(path)
        entry, problems = record(document, wanted)
        self.problems += problems
        if entry is None:
            return
        if entry.id != path.stem:
            text = f"the id is ‘{entry.id}’ but the file is called {path.name}; the two must agree"
            self.problems.append(document.problem(("id",), text, "id"))
        if entry.id in self.kinds[kind]:
            other = self.places[(kind, entry.id)].file.relative_to(self.folder)
            self.problems.append(document.problem(("id",), f"‘{entry.id}’ stands also in {other}", "twice"))
            return
        self.kinds[kind][entry.id] = entry
        self.places[(kind, entry.id)] = Place(path, _id_line(document.text))

    def _take_sources(self, document: Document) -> None:
        found, problems = record(document, dict[str, Source])
        self.problems += problems
        for id_, source in (found or {}).items():
            if id_ in self.sources:
                other = self.places[("sources", id_)].file.name
                self.problems.append(document.problem((id_,), f"the source ‘{id_}’ stands also in {other}", "twice"))
                continue
            self.sources[id_] = source
            self.places[("sources", id_)] = Place(document.file, document.line(id_))

    def _mapping(self, name: str, kind: type[dict[str, Any]]) -> dict[str, Any]:
        path = self.folder / name
        if not path.exists():
            return {}
        found, problems = record(read_document(path), kind)
        self.problems += problems
        return found or {}


def _id_line(text: str) -> int:
    found = _ID_LINE.search(text)
    return text.count("\n", 0, found.start()) + 1 if found else 1


def _strangers(folder: Path) -> Iterator[Problem]:
    """YAML that would be passed over in silence, because its folder or its name is not one that is read."""
    for path in sorted(folder.iterdir()):
        if path.is_dir() and path.name not in _FOLDERS and next(_yaml_files(path), None):
            yield Problem(path, 1, f"there is no kind of entry ‘{path.name}’{did_you_mean(path.name, _FOLDERS)}", "folder")
        elif path.suffix in (".yaml", ".yml") and path.name not in _WORD_FILES:
            yield Problem(path, 1, f"‘{path.name}’ belongs in the folder of its kind{did_you_mean(path.name, _WORD_FILES)}", "folder")
