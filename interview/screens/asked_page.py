"""The page the session stands at, shown in parts that are updated in place."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress
from typing import TYPE_CHECKING

from textual import events
from textual.containers import Container
from textual.message import Message

from interview.asking.kinds import Moment
from interview.asking.question import Status
from interview.asking.route import Step
from interview.garden.gate import ways_out
from interview.garden.session import Session
from interview.garden.site.cautions import LOCATE
from interview.garden.soak.reading_lines import typed_instant
from interview.reading import Refused
from interview.screens import words
from interview.screens.badge import badged, told
from interview.screens.field import Asked
from interview.screens.fields import field_for
from interview.screens.frame import KeyLine
from interview.screens.lists import Choices
from interview.screens.preview import Preview
from interview.screens.question_page import Mode, Shown
from interview.screens.question_room import TALL, QuestionRoom
from interview.screens.saver import BackgroundKeeper
from interview.screens.typed_ahead import TypedAhead
from interview.screens.usual_rows import (
    MORE,
    SKIPPED,
    WANTED,
    UsualRow,
    UsualRows,
    put_off_at,
    rows_at,
    value_words,
)

if TYPE_CHECKING:
    from interview.garden.verdicts import Verdict  # it knows every sum

LEFT_OUT = "Keys pressed before this question appeared were ignored. Look, then press them again."
TAKES_ALL = "Enter takes all; a number or an arrow, then Enter, changes one."
GOES_ON = "Enter goes on; a number or an arrow, then Enter, goes there."


READINGS_KEY = "F3 shows the readings and their plot."
"""Said with the result, as the key line at 80 columns has no room for it."""


class AskedPage(QuestionRoom):
    """Shows the page; what comes of an answer is in ``QuestionScreen``."""

    def __init__(self, session: Session, saver: BackgroundKeeper, file: Callable[[], str]) -> None:
        super().__init__(session, saver, file)
        self._fresh = ""
        """What the field held before anything was typed."""
        self._turn = asyncio.Lock()
        """One showing at a time: a page that closes asks for one while a jump asks for another."""
        self._ahead = TypedAhead()
        self._given: str | None = None
        self._refused: str | None = None
        """What stood in the field as it was refused: until it is changed the reason stands."""
        """The text that was taken, while the next question is on its way."""
        self._typed: dict[str, str] = {}
        """The words typed into the boxes of this page, by address, until it is taken whole."""
        self._drafts_saved = dict(session.drafts)
        self._row = ""
        """The address of the row that is open."""
        self._listed = False
        """Whether the rows are gone to though the page has boxes too."""
        self._all_rows = False
        """Whether the further rows are shown."""
        self._verdict: Verdict | None = None
        """What speaks against the answer just kept, until a way on is chosen."""

    # Where one is on the page

    def _boxes(self) -> list[Step]:
        """Return the boxes of this page, for the words typed so far."""
        place = self._session.place
        if place is None:
            return []
        if place.page.tells == "timer":  # they are given on a page of their own, or one by one
            return [self._session.step] if self._session.step else []
        return self._session.boxes(self._words_so_far())

    def _words_so_far(self) -> dict[str, str]:
        """Return the words typed, and for a box without any what Enter alone takes."""
        words_at = self._typed_words()
        for step in self._session.boxes(words_at):
            open_now = self._session.way.status(step) is Status.OPEN
            if step.address not in words_at and open_now:
                words_at[step.address] = self._session.offered(step) or ""
        return words_at

    def _words_typed(self) -> dict[str, str]:
        typed, field, step = self._typed_words(), self.field, self._step
        if step is not None and field is not None and field.draft != self._fresh:
            typed[step.address] = field.text
        return typed

    def _typed_words(self) -> dict[str, str]:
        return {address: text for address, text in self._typed.items() if text.strip()}

    def _rows(self) -> list[UsualRow]:
        place = self._session.place
        if place is None:
            return []
        rows = rows_at(self._session, place, self._all_rows, self._typed_words())
        if place.page.asked and place.page.more:
            # What the words typed make a box of is no row as well.
            boxes = {one.address for one in self._boxes()}
            rows = [one for one in rows if one.key not in boxes]
        return [*rows, *put_off_at(self._session, place)]

    def _mode(self) -> Mode:
        step, place = self._session.step, self._session.place
        if self._verdict is not None or (step is not None and self._session.shut(step)):
            return Mode.WAYS
        if step is not None and (place is None or self._row == step.address):
            return Mode.BOX
        at_a_box = step is not None and step.address in [one.address for one in self._boxes()]
        return Mode.BOX if at_a_box and not self._listed else Mode.ROWS

    def _should(self) -> Shown:
        """Return what should stand on the page."""
        session, step, place = self._session, self._session.step, self._session.place
        name = place.name if place else step.address if step else ""
        mode = self._mode()
        address = step.address if step else ""
        kept = step.view(session.answers).text(step.question) if step else None
        shut = bool(step and session.shut(step))
        lines = [] if mode is Mode.BOX else [f"{one.key}{one.value}" for one in self._rows()]
        lines += [self._verdict.line] if self._verdict else []
        tells = mode is Mode.ROWS and place is not None and place.page.tells
        answers = session.answers.texts if tells else {}
        return Shown(mode, name, address, kept, shut, tuple(lines), answers)

    async def _show(self) -> None:
        """Show where the session stands; what is shown already stays as it is."""
        async with self._turn:
            should = self._should()
            with self.app.batch_update():  # one paint a turn
                if should.name and should != self._shown:
                    await self._show_page(should)
                self._show_around()

    async def _show_page(self, should: Shown) -> None:
        before, field = self._shown, self.field
        same = before is not None and (before.address, before.mode) == (should.address, should.mode)
        half = field.typed if same and field is not None else ""
        missed = self._given is not None and field is not None and field.text != self._given
        if before is not None and before.name != should.name:
            self.tell("")
        session = self._session
        self._step, self._place, self._shown = session.step, session.place, should
        self._aside, self._given = "", None
        for name in ("aside", "shut", "caution", "hint", "asked"):
            self._words(name, "")
        self.query_one(Preview).forget()
        slot = self._slot
        self.set_focus(None)  # else it goes to the key line meanwhile
        await slot.remove_children()
        self._show_place()
        self._set_verdict_first(should.mode is Mode.WAYS)
        match should.mode:
            case Mode.BOX:
                await self._show_box(slot, half)
            case Mode.ROWS:
                await self._show_rows(slot)
            case Mode.WAYS:
                await self._show_ways(slot)
        self.query_one("#asking").scroll_home(animate=False)
        self._ahead.turned(Message().time)
        if missed:
            self.warn(LEFT_OUT)

    def _set_verdict_first(self, first: bool) -> None:
        """Put what speaks against an answer over the ways on, else what is said under the field."""
        asking, heard = self.query_one("#asking"), self.query_one("#heard")
        if heard.has_class("lead") != first:
            heard.set_class(first, "lead")
            asking.move_child(heard, before=self.query_one("#slot" if first else "#preview"))

    def _show_place(self) -> None:
        """Show what the page is about, and what stands above and below the field."""
        assert self._shown is not None
        step, place, session = self._step, self._place, self._session
        item = words.item_name(session, step) if step is not None else ""
        alone = place is None or (len(place.page.asked) < 2 and not place.page.usual)
        title = "" if alone or place is None else session.answers.told(place.page.title)
        if step is not None and session.worded(step).text.startswith(title):
            title = ""  # the question says it below
        self._words("item", " · ".join(one for one in (title, item) if one))
        self._set_body({"whole": self._shown.mode is Mode.ROWS})
        self._show_told()
        self._show_boxes()

    def _show_told(self) -> None:
        """Show what the page tells, its lines apart where the window is high enough."""
        assert self._shown is not None
        lines = self._told() if self._shown.mode is Mode.ROWS else []
        locate = self._session.answers.told(LOCATE)
        if locate in lines:
            lines.remove(locate)
            self._words("caution", f"CAUTION: {locate}")
        self._words("told", told(lines, self.window.height >= TALL))

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        if self._shown is not None:
            self._show_told()

    def _told(self) -> list[str]:
        """Return what this page tells; what is still to be found out has rows."""
        if self._place is None or not self._place.page.tells:
            return []
        from interview.garden import told_pages

        lines = told_pages.told(self._session, self._place)
        lines = [one for one in lines if not one.startswith("To find out: ")]
        keys = [READINGS_KEY] if self._place.page.tells == "result" else []
        return [*lines, *keys]

    def _show_boxes(self) -> None:
        """Show the other boxes of the page, each in a line above or below the field."""
        assert self._shown is not None
        place, boxes = self._place, self._boxes()
        addresses = [one.address for one in boxes]
        above, below = list[str](), list[str]()
        if self._shown.mode is Mode.BOX and not self._row and place is not None:
            at = addresses.index(self._shown.address) if self._shown.address in addresses else 0
            above = [self._box_line(one) for one in boxes[:at]]
            below = [self._box_line(one) for one in boxes[at + 1 :]]
            if place.page.tells != "timer":
                below += [f"{one.label}: {one.value}".rstrip(": ") for one in self._rows()]
        elif self._shown.mode is Mode.ROWS:
            above = [self._box_line(one) for one in boxes]
        self._words("before", "\n".join(above))
        self._words("after", "\n".join(below))

    def _box_line(self, step: Step) -> str:
        session = self._session
        label = step.worded(session.answers).label
        if typed := self._typed.get(step.address, "").strip():
            try:
                return f"{label}: {session.read(step, typed, self._typed_words()).echo}"
            except (Refused, ValueError):
                return f"{label}: {' '.join(typed.split())}"
        value = value_words(session, step, self._typed_words())
        waits = value == WANTED or session.way.status(step) is not Status.OPEN
        waits = waits or value == SKIPPED
        return f"{label}: {value.replace(WANTED, '…') if waits else f'Enter takes {value}'}"

    async def _show_box(self, slot: Container, half: str) -> None:
        step, session = self._step, self._session
        assert step is not None
        view = step.view(session.supposing(self._typed_words()))
        question = session.worded(step, self._typed_words())
        kept = view.text(question) if step.address not in self._typed else self._kept(step)
        typed = ""
        if isinstance(question.kind, Moment) and kept is not None:
            with suppress(Refused):  # a time that does not fit the others is shown as well
                typed = typed_instant(question.kind.read(kept, view), session.now)
        asked = Asked(
            question.kind,
            kept,
            session.offered(step, self._typed_words()),
            question.kind.hint(view.units),
            typed=typed,
        )
        self._words("asked", question.text)
        caution = f"{session.beware(step)} {question.caution_in(view)}".strip()
        self._words("caution", f"CAUTION: {caution}" if caution else "")
        field = field_for(asked)
        await slot.mount(field)
        hint = asked.examples[:1].upper() + asked.examples[1:]
        hint = field.how or f"{hint}."
        if asked.kept is None and not asked.default and self._optional(step):
            hint = f"{hint} {SKIPPED}."
        self._words("hint", hint)
        self._fresh = field.draft
        if step.address in session.drafts:
            field.restore(session.drafts[step.address])
        elif self._typed.get(step.address):
            field.restore(self._typed[step.address])
        elif half:
            field.carry(half)
        fault = step.view(session.answers).fault(question) or ""
        said = fault or session.remark(step, asked.text) or self._meant(step, asked.text)
        self._hear(said, refused=bool(fault))
        field.begin()
        if asked.text and field.draft == self._fresh and step.address not in session.drafts:
            field.offer_anew()

    def _kept(self, step: Step) -> str | None:
        return step.view(self._session.answers).text(step.question)

    def _optional(self, step: Step) -> bool:
        return step.question.key in self._session.answers.interview.optional

    async def _show_rows(self, slot: Container) -> None:
        rows = self._rows()
        self._hear("")
        if rows:
            listing = UsualRows(rows)
            await slot.mount(listing)
            listing.focus()
            self._show_what_enter_does(listing)
        else:
            self._words("hint", "Enter goes on.")
            self.show_keys()
            self.query_one(KeyLine).point_at("go_on")

    def _show_what_enter_does(self, listing: UsualRows) -> None:
        """Say under the rows what Enter does now."""
        row = listing.row
        if row is None:
            usual = any(not one.goes for one in listing.rows)
            place = self._place
            lead = "The usual for the rest. " if place is not None and place.page.tells else ""
            said = f"{lead}{TAKES_ALL}" if usual and self._takes_rows else GOES_ON
        elif row.key == MORE:
            said = "Enter shows them."
        elif row.goes:
            said = f"Enter goes to “{row.label.removeprefix('To find out: ')}”."
        else:
            said = f"Enter opens “{row.label}”. Up above the first row: Enter takes all."
        self._words("hint", said)

    @property
    def _takes_rows(self) -> bool:
        return self._place is not None and bool(self._place.page.usual or self._place.page.asked)

    async def _show_ways(self, slot: Container) -> None:
        """Show why one cannot go on here, or should not, and what can be done."""
        step, session = self._step, self._session
        if self._verdict is not None:
            ways = [(one.target, one.label) for one in self._verdict.ways]
            self._hear(badged(self._verdict), refused=True)
            self._words("hint", "A number or the arrows choose a way, then press Enter.")
        else:
            assert step is not None
            question = session.worded(step)
            self._words("asked", question.text)
            self._words("shut", words.shut(session, step))
            found = ways_out(step, session.answers, session.now.date())
            ways = [(one.address, one.label) for one in found if one.address is not None]
            self._words("hint", words.meanwhile(session))
            self._hear("")
        if ways:
            listing = Choices(ways, "", "")
            await slot.mount(listing)
            listing.focus()
        else:
            self.show_keys()
            self.query_one(KeyLine).point_at("go_on")

    def _meant(self, step: Step, kept: str) -> str:
        """Say in words a day or a time that is kept, as the file writes it, in its figures."""
        return (
            self._understood(kept) if step.question.kind.name in ("date", "date and time") else ""
        )

    def _understood(self, text: str) -> str:
        """Say how ``text`` is understood, where that can be said and is not plain."""
        if self._step is None:
            return ""
        try:
            read = self._session.read(self._step, text, self._typed_words())
            echo = read.echo if text.strip() else ""
        except (Refused, ValueError):
            echo = ""
        return f"I read this as {echo}." if echo and echo != text else ""

    def _refuse(self, why: str) -> None:
        """Say why an answer cannot be kept; what was typed stays."""
        self._hear(why, refused=True)
        self._refused = self.field.draft if self.field is not None else None
        self.query_one("#heard").scroll_visible(animate=False)
        if self.field is not None:
            self.field.begin()

    def heeds(self, event: events.Key | events.Paste) -> bool:
        """Tell whether a key is for the question shown, and not typed ahead of it."""
        key = event.key if isinstance(event, events.Key) else "paste"
        printable = isinstance(event, events.Key) and event.is_printable
        if self._ahead.heeds(key, printable, event.time):
            return True
        if printable or key == "paste":
            self.warn(LEFT_OUT)
        return False
