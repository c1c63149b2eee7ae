"""One YAML file as mappings, lists and text.

Nothing runs and nothing is guessed: every scalar stays text until its record says what it is (`no` is not False, `12:30` not 750).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

import yaml

from fitdoctor.knowledge.knowledge import Problem

MOST_BYTES = 262_144
MOST_ALIASES = 20
DEEPEST = 24

HAS_LIBYAML = hasattr(yaml, "CBaseLoader")
"""Without libyaml reading is about six times slower; `read_knowledge` says so."""


def _loader() -> Any:
    """libyaml's parser without the guessing of types, which costs a third of the time; the plain one where libyaml is missing."""
    if not HAS_LIBYAML:
        return yaml.BaseLoader
    from yaml._yaml import CParser

    def nothing(*_: Any) -> None:
        """No path leads to a type of its own."""

    def text(*_: Any) -> str:
        return "tag:yaml.org,2002:str"

    return type("PlainLoader", (CParser,), {"descend_resolver": nothing, "ascend_resolver": nothing, "resolve": text})


_Loader: Any = _loader()
_SUSPECT = re.compile("[&*!]")
_Dumper: Any = getattr(yaml, "CSafeDumper", yaml.SafeDumper)

Step = str | int


@dataclass(frozen=True)
class Document:
    """One file as plain values; `plain` is None where it could not be read, and then `problems` says why."""

    file: Path
    text: str = ""
    plain: Any = None
    problems: tuple[Problem, ...] = ()

    def line(self, *path: Step) -> int:
        """The line of the nearest place on a path of keys and positions, such as ("shows_as", 0, "symptom")."""
        return 1 if self.plain is None else _line(self.text, path)

    def problem(self, path: tuple[Step, ...], text: str, rule: str) -> Problem:
        """Something wrong at a place in this file."""
        return Problem(self.file, self.line(*path), text, rule)


class _Refused(Exception):
    """Reading stops here."""

    def __init__(self, at: Any, text: str) -> None:
        super().__init__(text)
        self.line, self.text = int(at.start_mark.line) + 1, text


def read_document(file: Path) -> Document:
    """Read one YAML file; what is not plain, small, UTF-8 YAML is refused as a problem."""
    try:
        if file.stat().st_size > MOST_BYTES:
            return _refused(file, 1, f"the file is larger than {MOST_BYTES // 1024} KB")
        raw = file.read_bytes()
    except OSError as error:
        return _refused(file, 1, f"the file cannot be read: {error.strerror}")
    try:
        return parse_document(file, raw.decode("utf-8-sig"))
    except UnicodeDecodeError as error:
        return _refused(file, raw.count(b"\n", 0, error.start) + 1, "the file is not UTF-8 text; save it as UTF-8")


def parse_document(file: Path, text: str) -> Document:
    """The same for text at hand."""
    try:
        if _SUSPECT.search(text):
            _refuse_tags_and_swelling(text)
        node = yaml.compose(text, Loader=_Loader)
        if node is None:
            return _refused(file, 1, "the file is empty")
        return Document(file, text, _plain(node, 0))
    except _Refused as refused:
        return _refused(file, refused.line, refused.text)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        return _refused(file, mark.line + 1 if mark else 1, f"not YAML: {error.problem or error.context}")
    except (yaml.YAMLError, RecursionError, ValueError) as error:
        return _refused(file, 1, f"not YAML: {' '.join(str(error).split())}")


def line_in(file: Path, *path: Step) -> int:
    """The line of a place in a file, for a problem found later; 1 where the file is gone or no longer reads."""
    return read_document(file).line(*path)


def write_document(values: Any) -> str:
    """Plain values as YAML text."""
    return str(yaml.dump(values, Dumper=_Dumper, allow_unicode=True, sort_keys=False, width=120))


def _refused(file: Path, line: int, text: str) -> Document:
    return Document(file, problems=(Problem(file, line, text, "yaml"),))


def _refuse_tags_and_swelling(text: str) -> None:
    aliases = 0
    for event in yaml.parse(text, Loader=_Loader):
        tag = getattr(event, "tag", None)
        if tag is not None:
            raise _Refused(event, f"the tag ‘{tag}’ is not allowed; write plain text")
        aliases += isinstance(event, yaml.AliasEvent)
        if aliases > MOST_ALIASES:
            raise _Refused(event, f"more than {MOST_ALIASES} aliases")


def _plain(node: Any, depth: int) -> Any:
    kind = node.__class__
    if kind is yaml.ScalarNode:
        return node.value
    if depth >= DEEPEST:
        raise _Refused(node, f"nested deeper than {DEEPEST} levels")
    if kind is yaml.SequenceNode:
        return [_plain(item, depth + 1) for item in node.value]
    made: dict[str, Any] = {}
    for key, value in node.value:
        if key.__class__ is not yaml.ScalarNode:
            raise _Refused(key, "a key must be plain text")
        if key.value in made:
            raise _Refused(key, f"the key ‘{key.value}’ stands here twice")
        made[key.value] = _plain(value, depth + 1)
    return made


@lru_cache(maxsize=4)
def _nodes(text: str) -> Any:
    return yaml.compose(text, Loader=_Loader)


def _line(text: str, path: tuple[Step, ...]) -> int:
    node = at = _nodes(text)
    for step in path:
        if isinstance(node, yaml.MappingNode):
            found = next(((key, value) for key, value in node.value if key.value == step), None)
            if found is None:
                break
            at, node = found
        elif isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
            at = node = node.value[step]
        else:
            break
    return int(at.start_mark.line) + 1
