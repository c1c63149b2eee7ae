"""One YAML file as mappings, lists and text.

Nothing runs and nothing is guessed: every scalar stays text until its record says what it is (`no` is not False, `12:30` not 750).
"""

from __future__ import annotations

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

_Loader: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
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

    def __init__(self, line: int, text: str) -> None:
        super().__init__(text)
        self.line, self.text = line, text


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
    builder = _Builder()
    try:
        for event in yaml.parse(text, Loader=_Loader):
            builder.take(event)
    except _Refused as refused:
        return _refused(file, refused.line, refused.text)
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        return _refused(file, mark.line + 1 if mark else 1, f"not YAML: {error.problem or error.context}")
    except (yaml.YAMLError, RecursionError, ValueError) as error:
        return _refused(file, 1, f"not YAML: {' '.join(str(error).split())}")
    if builder.whole is None:
        return _refused(file, 1, "the file is empty")
    return Document(file, text, builder.whole)


def line_in(file: Path, *path: Step) -> int:
    """The line of a place in a file, for a problem found later; 1 where the file is gone or no longer reads."""
    return read_document(file).line(*path)


def write_document(values: Any) -> str:
    """Plain values as YAML text."""
    return str(yaml.dump(values, Dumper=_Dumper, allow_unicode=True, sort_keys=False, width=120))


def _refused(file: Path, line: int, text: str) -> Document:
    return Document(file, problems=(Problem(file, line, text, "yaml"),))


class _Builder:
    """Puts events together to values. No recursion, so depth cannot hurt; aliases are few, so they cannot swell."""

    def __init__(self) -> None:
        self.whole: Any = None
        self._open: list[Any] = []
        self._keys: list[str | None] = []
        self._names: list[str | None] = []
        self._named: dict[str, Any] = {}
        self._aliases = 0

    def take(self, event: Any) -> None:
        kind = type(event)
        if kind is yaml.ScalarEvent:
            self._place(self._name(event, event.value), event)
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            self._start(event, {} if kind is yaml.MappingStartEvent else [])
        elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            self._end()
        elif kind is yaml.AliasEvent:
            self._place(self._aliased(event), event)
        elif kind is yaml.DocumentStartEvent and self.whole is not None:
            raise _Refused(_line_of(event), "a second document starts here; one file holds one")

    def _start(self, event: Any, container: Any) -> None:
        _no_tag(event)
        if len(self._open) >= DEEPEST:
            raise _Refused(_line_of(event), f"nested deeper than {DEEPEST} levels")
        self._place(container, event)
        self._open.append(container)
        self._keys.append(None)
        self._names.append(event.anchor)

    def _end(self) -> None:
        closed, name = self._open.pop(), self._names.pop()
        self._keys.pop()
        if name:
            self._named[name] = closed

    def _name(self, event: Any, value: str) -> str:
        _no_tag(event)
        if event.anchor:
            self._named[event.anchor] = value
        return value

    def _aliased(self, event: Any) -> Any:
        self._aliases += 1
        if self._aliases > MOST_ALIASES:
            raise _Refused(_line_of(event), f"more than {MOST_ALIASES} aliases")
        if event.anchor not in self._named:
            raise _Refused(_line_of(event), f"the alias ‘*{event.anchor}’ stands for nothing above it")
        return self._named[event.anchor]

    def _place(self, value: Any, event: Any) -> None:
        if not self._open:
            self.whole = value
            return
        inside, key = self._open[-1], self._keys[-1]
        if isinstance(inside, list):
            inside.append(value)
        elif key is not None:
            inside[key] = value
            self._keys[-1] = None
        elif not isinstance(value, str):
            raise _Refused(_line_of(event), "a key must be plain text")
        elif value in inside:
            raise _Refused(_line_of(event), f"the key ‘{value}’ stands here twice")
        else:
            self._keys[-1] = value


def _no_tag(event: Any) -> None:
    if event.tag is not None:
        raise _Refused(_line_of(event), f"the tag ‘{event.tag}’ is not allowed; write plain text")


def _line_of(event: Any) -> int:
    return int(event.start_mark.line) + 1


@lru_cache(maxsize=4)
def _nodes(text: str) -> Any:
    return yaml.compose(text, Loader=_Loader)


def _line(text: str, path: tuple[Step, ...]) -> int:
    node = _nodes(text)
    line = _line_of(node)
    for step in path:
        if isinstance(node, yaml.MappingNode):
            found = next(((key, value) for key, value in node.value if key.value == step), None)
            if found is None:
                break
            line, node = _line_of(found[0]), found[1]
        elif isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
            node = node.value[step]
            line = _line_of(node)
        else:
            break
    return line
