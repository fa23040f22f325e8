"""How the question page shares its room: the question, the reason for it, a picture, the plan."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterable, Sequence

from textual import events
from textual.content import Content
from textual.geometry import Size
from textual.widget import Widget
from textual.widgets import OptionList

from interview.garden.scenes import scene_of
from interview.garden.session import Session
from interview.screens.beside import PlanSoFar
from interview.screens.field import Field
from interview.screens.frame import Notice, Said, Weight
from interview.screens.live import LivePicture
from interview.screens.parts import LOW, NARROW, WIDE, Words
from interview.screens.preview import Preview
from interview.screens.question_page import Mode, QuestionPage
from interview.screens.reminding import reminders_of
from interview.screens.saver import BackgroundKeeper
from interview.screens.usual_rows import UsualRows

PLAN_LINES = 5
"""Lines kept for what is known, with their border, under any question of a narrow window."""
LEAST_PLAN = 2
"""The same in a low one."""
LEAST_LIST = 4
"""Lines that a list of choices keeps where the question must scroll."""
NARROWEST_PICTURED = 80
"""Columns under which a question has no picture beside it."""
WIDEST_QUESTION = 72
PADDING = 5
"""Columns beside the words of a question: blanks, and the bar of a question that scrolls."""
EDGE = 2
"""Columns of the edge before a reason."""
VERDICT_LINES = 2
"""Lines kept for the verdict on what is typed."""
SAID_LINES = 5
"""Lines kept over the list of a stage for what is said of the words typed, so that none moves."""
BLANKS, EDGES = 2, 2
"""Lines that give way to a picture: blank ones of a question, and the edges of its field."""
LAID_OUT = {
    "whole": {"left", "item", "beside", "plan_so_far"},
    "pictured": {"body", "left", "asking", "beside", "live", "plan_so_far", "plan_title"},
    "tight": {"asked", "caution"},
    "dense": set[str](),
}
"""The parts whose style hangs on each class of ``#body``; on the last one that of a field's line,
and of what it is in."""
TALL = 28
"""Lines from which on a blank line parts a question from the reason for it."""


class QuestionRoom(QuestionPage):
    """Shows around the question what there is room for."""

    def __init__(self, session: Session, saver: BackgroundKeeper, file: Callable[[], str]) -> None:
        super().__init__(session, saver, file)
        self._pictured = False
        """Whether a picture stands beside the question."""
        self._pictured_for: tuple[tuple[str, str, Mode | None], Size] | None = None
        """The question and the window that this was decided for."""
        self._fitted_to: Size | None = None
        """The window that what stands around the question was chosen for."""

    @property
    def window(self) -> Size:
        """The size of the window, known before the page has been laid out."""
        return self.app.size

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        if self._shown is not None and event.size != self._fitted_to:
            self.call_after_refresh(self._show_around)

    def _show_around(self) -> None:
        """Show what stands around the question."""
        if self._shown is None:
            return
        self._fitted_to = self.window
        self._show_picture()
        self._show_reason()
        self.show_frame()
        self.show_testing()
        self.call_after_refresh(self._fit)
        self.call_after_refresh(self.query_one(PlanSoFar).show, self._session)

    def on_plan_so_far_stands(self) -> None:
        """Offer the ways out where the plan now finds the room too small."""
        self.query_one(LivePicture).wait_no_longer()
        if self._shown is not None and self.is_mounted:
            self.show_keys()

    # The picture

    def _show_picture(self) -> None:
        """Show what is measured here beside the question, where both have room."""
        shown, place = self._shown, self._place
        live = self.query_one(LivePicture)
        address = (shown.name, shown.address) if shown is not None else ("", "")
        asked = ((*address, self.mode), self.window)
        if asked != self._pictured_for:
            # The ways on from an answer keep the picture it had, or had not.
            before, self._pictured_for = self._pictured_for, asked
            same = before is not None and (before[0][:2], before[1]) == (address, self.window)
            same = same and self.mode is Mode.WAYS
            spare = self._spare_beside_picture()
            most = BLANKS + (EDGES if self._slot.query(".entry") else 0)
            may = spare is not None and spare >= -most
            self._set_pictured((self._pictured if same else True) and may, -(spare or 0))
        if not self._pictured or place is None:
            live.forget()
        else:
            live.show(self._session, place, self._step, self._words_typed())

    def _spare_beside_picture(self) -> int | None:
        """Return how many lines the question leaves free beside a picture; none where none is."""
        shown, width = self._shown, self.window.width
        if shown is None or shown.shut or width < NARROWEST_PICTURED:
            return None
        rows = shown.mode is Mode.ROWS or self._place is None or not self._place.page.asked
        if rows and width < WIDE:
            return None
        place, step = self._place, self._step
        if self.window.height < LOW or place is None or scene_of(place) is None:
            return None
        if place.page.usual and shown.mode is Mode.BOX and step and step.question.picture:
            return None  # it has one of its own
        column = _question_column(width) - PADDING
        return self._room_of_page() - VERDICT_LINES - self._lines(column)

    def _set_pictured(self, is_so: bool, lacks: int = 0) -> None:
        """Show a picture or none; where the question ``lacks`` lines beside it, less of its air."""
        self._pictured = is_so
        column = _question_column(self.window.width)
        air = {"tight": is_so and lacks > 0, "dense": is_so and lacks > BLANKS}
        self._set_body({"pictured": is_so, **air})
        left = self.query_one("#left").styles.inline
        if is_so or left.has_rule("width"):  # each change has the whole page painted anew
            left.width = column if is_so else None

    def _set_body(self, classes: dict[str, bool]) -> None:
        """Lay the page out in another way; Textual would style every part of it anew."""
        body = self.query_one("#body")
        before = body.classes
        body.update_classes(classes, update=False)
        changed = before ^ body.classes
        names = set().union(*(LAID_OUT[one] for one in changed))
        inner = body.walk_children(Widget, with_self=True) if names else ()
        parts = [one for one in inner if one.id in names]
        if "dense" in changed:
            parts += self._slot.query(".entry, Line")
        self.app.stylesheet.update_nodes(parts)

    def on_live_picture_pictured(self, event: LivePicture.Pictured) -> None:
        """Give the room back where nothing can be drawn yet."""
        if not event.there and self._pictured and event.place == self._place:
            self._set_pictured(False)
            self._show_reason()
            self.call_after_refresh(self._fit)

    def _words_typed(self) -> dict[str, str]:
        """Return the words typed at this page and not kept yet, by address."""
        return {}

    def _fit(self) -> None:
        """Let the question scroll before the plan loses its place."""
        if not self.is_mounted:
            return
        body, asking = self.query_one("#body").size, self.query_one("#asking")
        plan = self._plan_lines if self._beside else 0
        plan = min(plan, LEAST_PLAN) if self.query_one("#sketch").display else plan
        padding = self.query_one("#left").styles.padding.height
        room = max(1, body.height - plan - padding)
        # Beside a picture it has all the room there is, also when that changes.
        asking.styles.max_height = None if self._pictured else room
        lists = [one for one in self._slot.query(OptionList) if one.display]
        frames = [one.outer_size.height - one.size.height for one in lists]
        wanted = [one.virtual_size.height + edge for one, edge in zip(lists, frames, strict=True)]
        left = room - asking.virtual_size.height + sum(one.outer_size.height for one in lists)
        for listing, share in zip(lists, shares(left, wanted), strict=True):
            listing.styles.max_height = max(LEAST_LIST, share)
            self.call_after_refresh(listing.scroll_to_highlight)
        heard = self.query_one("#heard", Words)
        if self.focused is not None and asking in self.focused.ancestors:
            self.call_after_refresh(self.focused.scroll_visible, animate=False)
        if heard.said:
            self.call_after_refresh(heard.scroll_visible, animate=False)

    def _fit_list(self) -> None:
        """Leave a list the room beside what comes up; two share theirs, and asides are read on."""
        if len(self._slot.query(OptionList)) == 1 and not self._aside:
            self._fit()

    @property
    def _beside(self) -> bool:
        """Whether what is known stands under the page, and not at its side or nowhere."""
        under = self.window.width < NARROW and not self._pictured
        return under and self.query_one(PlanSoFar).display

    @property
    def _plan_lines(self) -> int:
        return LEAST_PLAN if self.window.height < LOW else PLAN_LINES

    def _tell(self, said: str, short: str = "", alarm: bool = False) -> None:
        """Tell something in the notice line: it covers nothing.

        ``short`` is told instead where there is no room for all of it.
        """
        self.tell(Said(said, Weight.ALARM if alarm else Weight.PLAIN, short))
        if self._shown is not None and self.is_mounted:
            self.call_after_refresh(self._fit_told)

    def _fit_told(self) -> None:
        if self._shown is not None and self.is_mounted:
            self._show_reason()
            self._fit()

    def _room(self) -> int:
        """Return how many lines there are for the question and what is told around it."""
        return self._room_of_page() - (self._plan_lines if self._beside else 0)

    def _room_of_page(self) -> int:
        """Return how many lines there are between the frame's."""
        frame = 4 + (self.window.height >= LOW)
        testing = self.query_one("#testing")
        padding = int(self.query_one("#left").styles.padding.top)
        due = testing.size.height if testing.display else 0
        return self.window.height - frame - due - padding

    @property
    def _width(self) -> int:
        """Return how many columns there are for the question."""
        if self._pictured:
            return _question_column(self.window.width) - PADDING
        beside = 0
        if self.window.width >= NARROW and self.query_one(PlanSoFar).display:
            beside = min(64, int(self.window.width * 0.42)) + 1
        return max(20, self.window.width - beside - 5)

    def _lines(self, width: int) -> int:
        """Return how many lines the question takes in ``width``, without the reason for it."""
        field = self.field
        lines = 2 + (field.lines_in(width) if field is not None else 0)
        lines += sum(one.lines_in(width) for one in self._slot.query(UsualRows))
        shown = ("item", "told", "before", "asked", "hint", "heard", "preview", "after")
        lines += self._lines_of(shown, width)
        for name in ("caution", "shut"):
            if said := str(self.query_one(f"#{name}", Words).said):
                lines += 1 + len(textwrap.wrap(said, width - 2))
        return lines

    def _lines_of(self, names: Iterable[str], width: int) -> int:
        texts = (str(self.query_one(f"#{name}", Words).said) for name in names)
        lines = (line for said in texts for line in said.splitlines())
        return sum(max(1, len(textwrap.wrap(line, width))) for line in lines)

    def _show_reason(self) -> None:
        """Show why we ask, how to find out, and this stage, where nothing has to give way."""
        step, width = self._step, self._width
        told = self.query_one(Notice).size.height - 1
        left = self._room() - self._lines(width) - max(0, told)
        if step is None or self.mode is not Mode.BOX:
            for name in ("reason", "how", "sketch"):
                self._words(name, "")
            self._show_stage(min(width, WIDEST_QUESTION), left - SAID_LINES)
            return
        question = step.worded(self._session.answers)
        gap = int(self.window.height >= TALL)
        for name, lead, said, wanted in (
            ("reason", "Why", question.why, self._aside != "why"),
            ("how", "How to find out", self._session.find_out(step), self._tells_how),
        ):
            lines = gap + len(textwrap.wrap(f"{lead}: {said}", width - EDGE)) if wanted else 0
            fits = wanted and lines <= left
            self._words(name, _led(lead, said) if fits else "")
            left -= lines
        # A picture helps here and now more than most of the plan so far does.
        under = left + (self._plan_lines - LEAST_PLAN if self._beside else 0)
        free = self._aside != "how" and not self._pictured
        sketched = free and _sketch_fits(question.picture, width, under)
        self._words("sketch", f"\n{question.picture}" if sketched else "")
        left -= question.picture.count("\n") + 2 if sketched else 0
        left -= 1 + max(0, SAID_LINES - self._lines_of(("heard", "preview"), width))
        self._show_stage(width, left)

    def _show_stage(self, width: int, room: int) -> None:
        """List the questions of this stage under all else, in a wide window."""
        listing: str | Content = ""
        if self.window.width >= WIDE and not self._aside and self._place is not None:
            from interview.screens.stage_list import stage_list

            listing = stage_list(self._session, self._place, self._step, width, room)
        self._words("stage_list", listing)

    @property
    def _tells_how(self) -> bool:
        return self.window.width >= WIDE and self._aside != "how"

    def show_testing(self) -> None:
        """Say that a reading of a soak test is due, once one is; nothing lies over the page."""
        # Under another page nobody sees it.
        if self._shown is None or not self.is_mounted or not self.is_active:
            return
        said = ""
        if self._session.answers.numbers("holes") and reminders_of(self.app).notice:
            from interview.screens.soak_watch import due_words

            said = due_words(self._session)
        self._words("testing", said)
        self.query_one("#testing").display = bool(said)

    def _hear(self, text: str | Content, refused: bool = False) -> None:
        heard = self.query_one("#heard", Words)
        said = bool(str(text))
        heard.set_class(refused and said, "refused")
        if refused:
            self.query_one(Preview).forget()
        self._slot.query(Field).set_class(refused and said, "amiss")
        if text != heard.said:
            heard.say(text)
            self._show_reason()
            self.call_after_refresh(self._fit)

    def action_aside(self, which: str) -> None:
        """Show or hide why we ask, or how to find out."""
        if self._step is None:
            return
        question = self._step.worded(self._session.answers)
        self._aside = "" if self._aside == which else which
        more = f"\n{question.more}" if question.more else ""
        said = {
            "": "",
            "why": f"Why: {question.why}{more}",
            "how": f"How to find out: {self._session.find_out(self._step)}",
        }
        if self._aside == "how" and question.picture:
            said["how"] += f"\n{question.picture}"
            if max(map(len, question.picture.splitlines())) > self._width - EDGE:
                self._set_pictured(False)  # folded, its lines would draw nothing
        elif not self._aside and not self._pictured:
            self._pictured_for = None
            self._show_picture()
        self._words("aside", said[self._aside])
        self._show_reason()
        if self._aside:
            self.call_after_refresh(self.query_one("#aside").scroll_visible, animate=False)


def shares(room: int, wanted: Sequence[int]) -> list[int]:
    """Return the most lines for each that wants so many: what one leaves the others have."""
    found = [room] * len(wanted)
    order = sorted(range(len(wanted)), key=lambda at: wanted[at])
    for done, at in enumerate(order):
        found[at] = room // (len(wanted) - done)
        room -= min(found[at], wanted[at])
    return found


def _question_column(width: int) -> int:
    """Return the columns of the question beside a picture, in a window of ``width``."""
    return min(WIDEST_QUESTION, 42 + (width - NARROWEST_PICTURED) * 3 // 10)


def _led(lead: str, said: str) -> Content:
    return Content.assemble((f"{lead}: ", "bold $text"), (said, ""))


def _sketch_fits(picture: str, width: int, room: int) -> bool:
    lines = picture.splitlines()
    return 0 < len(lines) < room and max(map(len, lines)) <= width
