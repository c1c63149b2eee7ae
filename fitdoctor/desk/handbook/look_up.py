"""Look it up: finds while one types, pages one after another, and the way back to where one was."""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.handbook.kinds import MAPPED, Key, choices_of
from fitdoctor.desk.handbook.narrowing import Choices
from fitdoctor.desk.handbook.page import LookUpPage
from fitdoctor.desk.handbook.print_page import ask_and_print
from fitdoctor.desk.handbook.trail import Trail
from fitdoctor.desk.job import Job
from fitdoctor.desk.window import Window
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.filters import Filter
from fitdoctor.knowledge.search import Hit

if TYPE_CHECKING:
    from fitdoctor.handbook import Page
    from fitdoctor.knowledge.graph import EntryGraph

PLACE = "look-up"
MOST, NEAR_THE_BEST = 400, 0.4


class LookUp(QObject):
    """Keeps the page in step with what is typed and opened."""

    def __init__(self, window: Window, job: Job) -> None:
        super().__init__(window)
        self.window, self.job = window, job
        self.trail = Trail()
        self._typed = self._focus = ""
        self._only = Filter()
        self._as_map = False
        self._from = "fit"
        window.placeWanted.connect(lambda place: self.open() if place == PLACE else None)
        window.printWanted.connect(self._print_if_open)
        job.knowledgeTaken.connect(self._take_knowledge)
        window.fills.append(self.fill)
        self.fill()

    @cached_property
    def graph(self) -> EntryGraph:
        """The links both ways; built when the first page is opened."""
        from fitdoctor.knowledge.graph import EntryGraph

        return EntryGraph(self.job.knowledge)

    def _take_knowledge(self) -> None:
        """The handbook was read anew: entries that went are no longer on the way one came."""
        self.__dict__.pop("graph", None)
        self.trail = self.trail.within(self.job.knowledge)

    def fill(self) -> None:
        """Put the page into the window, in its look, as it stood."""
        self.page = page = LookUpPage(self.window.look, self.job, self._choices)
        self.window.pages.addWidget(page)
        page.finds.edit.setText(self._typed)
        page.finds.show_filter(self._only)
        page.finds.narrowing.changed.connect(self._narrow)
        page.finds.edit.textChanged.connect(self._find)
        page.finds.edit.taken.connect(self._take)
        page.left.connect(self.leave)
        page.turned.connect(self.turn)
        page.mapWanted.connect(self.turn_map)
        page.map.wanted.connect(self._walk)
        for part in (page.finds.found, page.article, page.margin):
            part.wanted.connect(self.show_entry)
        page.article.printWanted.connect(self.print_page)
        self._find(self._typed)
        self._show()

    # ---- coming and going

    def open(self) -> None:
        """Come here, with the focus in the field; what was typed is marked, so that typing replaces it."""
        if self.window.place != PLACE:
            focus = self.window.focusWidget()
            self._from, self._focus = self.window.place, focus.objectName() if focus else ""
            self.window.show_place(PLACE, self.page)
        if not self._typed:
            self._find("")
        self.page.finds.edit.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.page.finds.edit.selectAll()

    def leave(self) -> None:
        """Go back to where one was."""
        focus = self._focus
        self.window.placeWanted.emit(self._from)
        found = self.window.findChild(QWidget, focus) if focus else None
        if found and found.isVisible():
            found.setFocus(Qt.FocusReason.OtherFocusReason)

    # ---- finding

    def _find(self, typed: str) -> None:
        self._typed = typed
        hits = self._hits(typed) if typed.strip() else self.job.index.browse(self._only) if self._only else self._at_hand()
        self.page.finds.show_found(hits, typed.strip())
        self.page.finds.found.mark(self.trail.here)

    def _narrow(self, only: Filter) -> None:
        self._only = only
        self._find(self._typed)

    def _choices(self) -> tuple[Choices, ...]:
        return choices_of(self.job.knowledge, self.job.index.facets.cloths())

    def _hits(self, typed: str) -> tuple[Hit, ...]:
        """The finds that come near the best one; among the few that a filter leaves, all of them."""
        hits = self.job.index.search(typed, self._only, MOST)
        return tuple(hit for hit in hits if self._only or hit.score >= NEAR_THE_BEST * hits[0].score)

    def _at_hand(self) -> tuple[Hit, ...]:
        """What the garment in hand has to do with: what shows, what it is, what is done."""
        know, case, assessment = self.job.knowledge, self.job.case, self.job.assessment
        ids = [("symptoms", id_) for id_ in case.seen]
        if assessment:
            ids += [("causes", id_) for id_ in assessment.treat]
            ids += [("methods", m.id) for c in assessment.treat for m in know.methods_for(c, case.garment)]
        known = (key for key in dict.fromkeys(ids) if key[1] in know.kind(key[0]))
        return tuple(Hit(id_, kind, know.kind(kind)[id_].title, 0.0, "") for kind, id_ in known)

    def _take(self) -> None:
        key = self.page.finds.found.current() or self.page.finds.found.first()
        if key:
            self.show_entry(key)

    # ---- pages

    def show_entry(self, key: Key) -> None:
        """Open the page of an entry."""
        self.trail = self.trail.opened(key)
        self._show()

    def turn(self, by: int) -> None:
        """One page back or forward."""
        self.trail = self.trail.moved(by)
        self._show()

    def turn_map(self) -> None:
        """The map in place of the page, or the page again."""
        self._as_map = not self._as_map
        self._show()

    def _walk(self, key: Key) -> None:
        """Go on to another entry of the map; the one it is drawn round opens its page."""
        if key == self.trail.here:
            self.turn_map()
        else:
            self.show_entry(key)

    def _show(self) -> None:
        page, here = self.open_page(), self.trail.here
        mapped = here is not None and here[0] in MAPPED
        if page and here and mapped and self._as_map:
            self.page.show_map(page, self.graph.around(*here))
        elif page:
            self.page.show_page(page)
        else:
            hint = tr("Type what you see, a part of the garment, or a word of the trade. The arrows go through the finds, Enter opens one.")
            self.page.show_hint(hint)
        other_way = tr("Show its page") if self._as_map else tr("Show the map round it")
        turns = self._title(self.trail.ahead(-1)), self._title(self.trail.ahead(1))
        self.page.turns.show_turns(*turns, other_way if mapped else "")
        self.page.finds.found.mark(here)

    def _title(self, key: Key | None) -> str:
        return getattr(self.job.knowledge, key[0])[key[1]].title if key else ""

    def open_page(self) -> Page | None:
        """The page that is open, as plain values."""
        from fitdoctor.handbook import entry_page

        here = self.trail.here
        return entry_page(self.job.knowledge, *here, graph=self.graph, shop=self.window.shop) if here else None

    # ---- printing

    def _print_if_open(self) -> None:
        if self.window.place == PLACE:
            self.print_page()

    def print_page(self) -> None:
        """Print the open page through the system's dialog."""
        page = self.open_page()
        if page is not None:
            ask_and_print(self.window, self.job, page)
