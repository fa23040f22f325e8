"""The pages with their answers: to look over, to search, to jump to, to take answers away."""

from __future__ import annotations

from typing import NamedTuple

from textual import events
from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option

from interview.asking import path, route
from interview.asking.question import Status
from interview.asking.route import Step
from interview.asking.way import Standing
from interview.garden.session import Session
from interview.garden.soak.reading_lines import said_words
from interview.garden.stages import GROUPS
from interview.screens import words
from interview.screens.lists import Rows
from interview.screens.page import Page
from interview.screens.parts import Ask, Line, Words
from interview.screens.welcome import ONE_BY_ONE, SHORT_WAY

DAYS = ("date", "list of date")
"""Kinds whose answers the file writes in figures; here they are said in words."""
_MARGIN, _UNDER = "  ", "  "
"""Before an answer, and more before the lines that it is folded to."""
NOTHING_FOUND = "No question or answer has these words. Try fewer, or clear them to see all."


class AnswerRow(NamedTuple):
    """One line of the list: a visit, a page, or a question with where it stands."""

    address: str
    """Where choosing it leads."""
    label: str
    said: str
    mark: str = ""
    stage: bool = False
    """Whether it is the heading of a visit."""
    page: bool = False
    """Whether it is the page of the questions after it."""
    aside: bool = False
    asked: str = ""
    """The question in full and the answer as the file has it, which are searched too."""

    @property
    def heading(self) -> bool:
        """Whether it is no question."""
        return self.stage or self.page

    def matches(self, search: str) -> bool:
        """Tell whether every word searched for is in this line."""
        whole = f"{self.address} {self.label} {self.said} {self.mark} {self.asked}".casefold()
        return all(word in whole for word in search.casefold().split())

    def rank(self, search: str) -> int:
        """Return how near this line is to what is searched for; the nearest first is 0.

        A title that begins so comes before one with a word that does, then whole words and
        beginnings of the name in the file, then anything else that holds it.
        """
        wanted = " ".join(search.casefold().split())
        label, address = self.label.casefold(), self.address.casefold()
        key = address.rpartition(".")[2]
        tests = (
            wanted in (label, address, key),
            label.startswith(wanted),
            f" {wanted}" in label,
            key.startswith(wanted) or address.startswith(wanted),
            wanted in label,
            all(word in label for word in wanted.split()),
        )
        return tests.index(True) if True in tests else len(tests)


_MARKS = {
    Status.OPEN: "",
    Status.ANSWERED: "",
    Status.UNKNOWN: "don't know yet",
    Status.FAULTY: "needs attention",
}


def entries(session: Session) -> list[AnswerRow]:
    """Return the whole interview as lines, visit by visit, page by page.

    A page with several questions has a line of its own before them. What stands on no page, and
    answers set aside, come last.
    """
    answers, way = session.answers, session.way
    found, visit, seen = list[AnswerRow](), "", set[str]()
    for place in way.places:
        if place.page.visit != visit:
            visit = place.page.visit
            found.append(AnswerRow(place.name, f"{visit[:1].upper()}{visit[1:]}", "", stage=True))
        steps = place.steps(place.page.keys, answers)
        if len(steps) != 1 or place.page.tells:
            item = f" {place.number}" if place.number else ""
            word = "" if not steps else _STANDINGS.get(way.standing(place), "")
            title = f"{answers.told(place.page.title)}{item}"
            found.append(AnswerRow(place.name, title, word, page=True))
        found += [_entry(session, step, False) for step in steps]
        seen |= {step.address for step in steps}
    others = [one for one in path.steps(answers) if one.address not in seen]
    if others:
        found.append(AnswerRow("", "On no page now", "", stage=True))
        found += [_entry(session, step, False) for step in others]
    aside = [step for a in route.set_aside(answers) if (step := route.step_at(a, answers))]
    if aside:
        found.append(AnswerRow("", "Set aside", "", stage=True))
        found += [_entry(session, step, True) for step in aside]
    return found


_STANDINGS = {
    Standing.OPEN: "open",
    Standing.FAULTY: "needs attention",
    Standing.UNTAKEN: "not taken yet",
    Standing.SHUT: "shut",
}


def _entry(session: Session, step: Step, aside: bool) -> AnswerRow:
    view = step.view(session.answers)
    standing = view.standing(step.question)
    text = view.text(step.question)
    mark = "set aside: does not apply now" if aside else _MARKS[standing]
    if standing is Status.OPEN and not mark:
        mark = "shut" if session.shut(step) else "open"
    if standing is not Status.FAULTY and step.address in session.drafts and not aside:
        mark = "half typed"
    said = "" if text is None or standing is Status.UNKNOWN else words.one_line(text)
    kind, value = step.question.kind, view.get(step.question)
    if value is not None and (hasattr(kind, "options") or kind.name in DAYS):
        said = kind.echo(value, view)
    elif said:
        said = " ".join(said_words(kind, text or "").split())
    item = f" ({GROUPS[step.question.group].label} {step.number})" if step.number else ""
    question = step.worded(session.answers)
    label, asked = question.label + item, f"{question.text} {text or ''}"
    return AnswerRow(step.address, label, said, mark, aside=aside, asked=asked)


class ReviewScreen(Page):
    """Look over every answer; closes with the address of the question to go to."""

    KEYS = "review"
    HEADING = "Every page and answer"

    def __init__(self, session: Session, here: Step | None) -> None:
        super().__init__()
        self._session = session
        self._here = here.address if here else ""
        self._all: list[AnswerRow] = []
        self._shown: list[AnswerRow] = []
        self._folded_to = 0

    def parts(self) -> ComposeResult:
        yield Words(words.counted(self._session), classes="quiet", id="counted")
        yield Line("", 60, placeholder="Type to search; arrows choose, Enter goes there", id="find")
        yield Rows(id="answers", markup=False)

    def on_mount(self) -> None:
        self._all = entries(self._session)
        self._fill("", self._here)
        self.query_one("#find").focus()

    def _fill(self, search: str, at: str = "") -> None:
        self._shown = self._all
        if search.strip():
            fits = [one for one in self._all if one.matches(search) and not one.stage]
            self._shown = sorted(fits, key=lambda one: (one.rank(search), one.page, one.aside))
        listing = self.query_one("#answers", OptionList)
        listing.clear_options()
        # A blank for the mark of the row one is at, and one for the scroll bar.
        self._folded_to = listing.content_size.width - 2
        listing.add_options([Option(_words(one, self._folded_to)) for one in self._shown])
        places = [p for p, one in enumerate(self._shown) if one.address == at and not one.heading]
        if self._shown:
            listing.highlighted = places[0] if places else 0
        none = "" if self._shown else NOTHING_FOUND
        self.query_one("#counted", Words).update(none or words.counted(self._session))

    def on_resize(self, event: events.Resize) -> None:
        """Fold the answers to the window."""
        super().on_resize(event)
        self.call_after_refresh(self._fold)

    def _fold(self) -> None:
        listing = self.query_one("#answers", OptionList)
        width = listing.content_size.width - 2
        if width != self._folded_to and self._all:
            at, self._folded_to = listing.highlighted, width
            for place, one in enumerate(self._shown):
                listing.replace_option_prompt_at_index(place, _words(one, width))
            listing.highlighted = at

    @property
    def _entry(self) -> AnswerRow | None:
        place = self.query_one("#answers", OptionList).highlighted
        return self._shown[place] if place is not None and place < len(self._shown) else None

    def on_input_changed(self, event: Input.Changed) -> None:
        self._fill(event.value, self._here if not event.value else "")

    def on_input_submitted(self) -> None:
        self.action_go()

    def on_option_list_option_selected(self) -> None:
        self.action_go()

    def action_go(self) -> None:
        """Go to the question of the line that is marked."""
        entry = self._entry
        if entry is None or not entry.address:
            return
        if entry.aside:
            self.tell("This answer does not apply now. It stays in the file.")
        else:
            self.dismiss(entry.address)

    def on_key(self, event: events.Key) -> None:
        """Let the arrows move the list while the search has the focus."""
        if event.key in ("up", "down", "pageup", "pagedown") and self.query_one("#find").has_focus:
            event.stop()
            listing = self.query_one("#answers", OptionList)
            match event.key:
                case "up":
                    listing.action_cursor_up()
                case "down":
                    listing.action_cursor_down()
                case "pageup":
                    listing.action_page_up()  # type: ignore[no-untyped-call]
                case _:
                    listing.action_page_down()  # type: ignore[no-untyped-call]

    def action_next_open(self) -> None:
        """Go to the first question without an answer."""
        place = self._session.way.first_open()
        if place is None:
            self.tell("No page is open that may be answered now.")
        else:
            self.dismiss(place.name)

    def action_every_question(self) -> None:
        """Ask every question on a page of its own, or only what is not usual."""
        session, entry = self._session, self._entry
        session.every_question = not session.every_question
        self._all = entries(session)
        self._fill(self.query_one("#find", Input).value, entry.address if entry else "")
        self.tell(ONE_BY_ONE if session.every_question else SHORT_WAY)

    def action_close(self) -> None:
        """Go back to the question."""
        self.dismiss(None)

    def action_clear(self) -> None:
        """Take the answer of the line away, after a question."""
        entry = self._entry
        if (
            entry is None
            or entry.stage
            or entry.page
            or not (entry.said or entry.mark == "don't know yet")
        ):
            self.tell("Choose a row with an answer first.")
            return
        asked = f"Take away the answer to “{entry.label}”?"

        def done(yes: bool | None) -> None:
            step = route.step_at(entry.address, self._session.answers)
            if yes and step is not None:
                self._session.clear(step)
                self._all = entries(self._session)
                self._fill(self.query_one("#find", Input).value, entry.address)

        self.app.push_screen(Ask(asked, "Yes, take it away", "No, keep it"), done)

    def action_remove(self) -> None:
        """Remove the whole hole, spot, surface or person of the line, after a question."""
        entry = self._entry
        parts = entry.address.split(".") if entry else []
        if len(parts) < 3 or (entry and entry.heading):
            self.tell("Choose a row of a hole, spot, surface or person first.")
            return
        named = f"{GROUPS[parts[0]].label} {parts[1]}"

        def done(yes: bool | None) -> None:
            if yes:
                self._session.remove_item(parts[0], int(parts[1]))
                self._all = entries(self._session)
                self._fill(self.query_one("#find", Input).value)

        asked = f"Remove {named} with all its answers? Those after it move up."
        self.app.push_screen(Ask(asked, "Yes, remove it", "No, keep it"), done)


COLUMNED, ANSWERS_AT = 90, 44
"""Columns from which on the answers stand under each other, and where they do."""


def _words(entry: AnswerRow, width: int) -> Content:
    """Return a line of the list; what is folded stays under its own beginning."""
    if entry.heading:
        style = "bold underline" if entry.stage else "bold"
        return Content.assemble((entry.label, style), "  ", (entry.said, "italic"))
    label, under = f"{entry.label}: ", _UNDER
    if width >= COLUMNED and len(label) <= ANSWERS_AT:
        label, under = label.ljust(ANSWERS_AT), " " * ANSWERS_AT
    pieces: list[tuple[str, str]] = []
    if entry.said:
        pieces.append((entry.said, "bold"))
    if entry.mark:
        # No colors of its own: on the row that is chosen they would be too near to its ground.
        style = "bold italic" if entry.mark == "needs attention" else "italic"
        pieces.append((f"  [{entry.mark}]" if entry.said else f"[{entry.mark}]", style))
    lead, words = "", Content.assemble(*pieces)
    if under is _UNDER:
        words = Content.assemble(label, words)
    else:
        lead = label
    if width <= len(_MARGIN) + len(under):
        return Content.assemble(_MARGIN, lead, words)
    lines = words.wrap(width - len(_MARGIN) - len(under)) or [words]
    rest = (Content.assemble(f"\n{_MARGIN}{under}", line) for line in lines[1:])
    return Content.assemble(_MARGIN, lead, lines[0], *rest)
