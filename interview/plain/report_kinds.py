"""The kinds of report: checks, the table, and pages; each of one garden, or one after another."""

from __future__ import annotations

import argparse
import itertools
import json
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from interview.asking.statuses import CLEAN, FAULTS, NAME, UNWRITTEN, written_by
from interview.plain.streams import new_page, passing, refuse, say, tell
from interview.reading.foreign import shown

if TYPE_CHECKING:
    from interview.garden.opening import ReadGarden
    from interview.garden.plan import Plan


class ReportKind(Protocol):
    """One kind of report, of a garden at a time."""

    def give(self, garden: ReadGarden) -> int:
        """Print it of one garden; return the exit status."""

    def lack(self, name: str, why: str) -> None:
        """Print what stands for a file, of several, of which there is none."""

    def end(self) -> None:
        """Print what ends a report on several files."""


def kind_of(given: argparse.Namespace) -> ReportKind | str:
    """Return the kind of report that is asked for, or why there is none such."""
    several = len(given.files) > 1
    if given.check:
        return _Checks(several)
    if not given.table:
        return _Pages(given, several)
    from interview.sheet.table import NoColumn, columns

    try:
        return _Table(columns(given.columns))
    except NoColumn as wrong:
        return str(wrong)


def tell_troubles(garden: ReadGarden, several: bool) -> None:
    """Tell the faults of an answers file by line; of several with its name."""
    for one in garden.loaded.troubles:
        place = f"{garden.name}:{one.line}" if several else f"line {one.line}"
        tell(f"{NAME}: {place}: {one.key}: {one.sentence}")


class _Checks:
    """The faults and open questions, each file under its name where there are several."""

    def __init__(self, several: bool) -> None:
        self._several = several
        self._begun = False

    def give(self, garden: ReadGarden) -> int:
        from interview.sheet import check

        beside = check.faults_beside(garden.plan)
        self._say(garden.name, check.check_text(garden.name, garden.loaded, beside))
        return FAULTS if garden.loaded.troubles or beside else CLEAN

    def lack(self, name: str, why: str) -> None:
        self._say(name, f"{shown(why)}\n")

    def end(self) -> None:
        pass

    def _say(self, name: str, text: str) -> None:
        if self._several:
            title = shown(name)
            text = "\n" * self._begun + f"{title}\n{'-' * len(title)}\n{text}"
        self._begun = True
        _give(text)


class _Table:
    """A line a garden, in the units of the first one that can be read."""

    def __init__(self, wanted: tuple[str, ...]) -> None:
        self._wanted = wanted
        self._lacking: list[str] = []
        self._metric: bool | None = None

    def give(self, garden: ReadGarden) -> int:
        from interview.sheet import table

        if self._metric is None:
            self._begin(garden.plan.metric)
        _give(table.row(garden, self._wanted, bool(self._metric)))
        return CLEAN

    def _begin(self, metric: bool) -> None:
        from interview.sheet import table

        self._metric = metric
        _give(table.head(self._wanted, metric))
        for name in self._lacking:
            self.lack(name, "")

    def lack(self, name: str, why: str) -> None:
        from interview.sheet import table

        if self._metric is None:
            self._lacking.append(name)
        else:
            _give(table.lacking(name, self._wanted))

    def end(self) -> None:
        if self._metric is None:  # not one of them could be read
            self._begin(metric=False)


class _Pages:
    """Plan, sheet, card or figures: one after another, or each in a file of its own."""

    def __init__(self, given: argparse.Namespace, several: bool) -> None:
        self._make, self._ending = _page(given)
        self._figures, self._card = given.figures, given.card
        self._json = given.json
        self._several = several
        self._place = None if given.output is None else _Places(given.output, several)
        self._begun = False

    def give(self, garden: ReadGarden) -> int:
        text, status = self._make(garden.plan), CLEAN
        passing("")
        if self._place is not None:
            status = _put(partial(self._place.of, garden.name, self._ending), text, garden.name)
        elif self._json and self._several:
            self._item({"file": garden.name, **json.loads(text)})
        else:
            self._head(garden.name, text.count("\n"))
            say(text, end="")
        tell_troubles(garden, self._several)
        return status

    def lack(self, name: str, why: str) -> None:
        if self._json and self._place is None:
            self._item({"file": name, "unreadable": why})
        elif self._figures and self._place is None:
            self._head(name, 0)
            say(f"unreadable: {_quoted(why)}")

    def end(self) -> None:
        if self._json and self._place is None:
            say("]" if self._begun else "[]")

    def _item(self, tree: dict[str, object]) -> None:
        """Write one garden as an item of a list."""
        say(f"{',' if self._begun else '['}{json.dumps(tree, indent=1)}")
        self._begun = True

    def _head(self, name: str, lines: int) -> None:
        """Begin one garden of several: a document, or a page, that names its file."""
        if not self._several:
            return
        if self._figures:
            say(f"---\nfile: {_quoted(name)}")
            return
        if self._begun:
            new_page()
        self._begun = True
        from interview.sheet.card import ROWS

        # A card that fills its page has no room for the name, and begins with the garden's.
        if not self._card or lines + 2 <= ROWS:
            say(f"FILE: {shown(name)}\n")


class _Places:
    """The files that pages are written to: the one named, or one a garden in that folder."""

    def __init__(self, named: str, several: bool) -> None:
        self._named = named
        self._folder = bool(named) and (several or named.endswith("/") or Path(named).is_dir())
        self._taken: set[str] = set()

    def of(self, name: str, ending: str) -> str:
        """Return the place of a page; raises ``OSError`` where its folder cannot be made."""
        if not self._folder:
            return self._named
        folder, stem = Path(self._named), Path(name).stem
        folder.mkdir(exist_ok=True)
        numbered = (stem if number == 1 else f"{stem}-{number}" for number in itertools.count(1))
        free = next(one for one in numbered if one.casefold() not in self._taken)
        self._taken.add(free.casefold())
        return str(folder / f"{free}{ending}")


def _put(place: Callable[[], str], text: str, answers: str) -> int:
    """Write a page to a file, whole or not at all, and over nothing but an earlier page."""
    from interview import answers_file as af
    from interview.sheet.written import NotOurs, put_page

    try:
        put_page(place(), text, Path(answers))
    except (NotOurs, af.NotSaved) as trouble:
        return refuse(f"not written: {trouble}", UNWRITTEN)
    except FileExistsError:
        return refuse("not written: what --output names is a file and no folder", UNWRITTEN)
    except (OSError, ValueError) as trouble:
        why = af.reason(trouble) if isinstance(trouble, OSError) else "Check the name."
        return refuse(f"not written: the folder cannot be made. {why}", UNWRITTEN)
    return CLEAN


def _page(given: argparse.Namespace) -> tuple[Callable[[Plan], str], str]:
    """Return what writes the page that is asked for, and how the name of its file ends.

    The others are not loaded.
    """
    if given.figures:
        from interview.sheet.figures_file import figures_json, figures_text

        made = figures_json if given.json else figures_text
        ending = ".figures.json" if given.json else ".figures.yaml"
        return partial(made, written_by=written_by()), ending
    if given.sheet:
        from interview.sheet.page import page_html

        return partial(page_html, working=given.working), ".html"
    if given.html:
        from interview.sheet.page import card_html

        return card_html, ".card.html"
    if given.card:
        from interview.sheet.card import card_text

        return card_text, ".card.txt"
    from interview.sheet.report import outside_text, plan_text

    return plan_text if given.working else outside_text, ".plan.txt"


def _give(text: str) -> None:
    """Print text where the line that tells how far it is may stand."""
    passing("")
    say(text, end="")


def _quoted(text: str) -> str:
    from interview.answers_file import double_quoted

    return double_quoted(text)
