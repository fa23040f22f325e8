"""The whole plan to read, the working of each figure, and the sheet to take outside."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any

from textual import events, work
from textual.app import App, ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import OptionList
from textual.widgets.option_list import Option
from textual.worker import get_current_worker

from interview import answers_file as af
from interview.asking.question import Unanswered
from interview.drawing.scene import Drawing
from interview.garden import figures, pictures
from interview.garden.overview import overview
from interview.garden.plan import Plan
from interview.garden.session import Session
from interview.garden.summary import folded_to
from interview.screens import words
from interview.screens.finale import Finale
from interview.screens.frame import Weight
from interview.screens.further import FurtherPages
from interview.screens.lists import Rows
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.page import FramedApp, Page
from interview.screens.parts import Folded, Words, is_there
from interview.screens.picture import Picture
from interview.sheet import next_steps
from interview.sheet.card import card_text
from interview.sheet.common import drawings_apart
from interview.sheet.page import page_html
from interview.sheet.report import outside_text, plan_text

TRIES = 20


class PlanScreen(FurtherPages, Page):
    """The plan as it stands; closes with the address of a question to go to, or nothing."""

    KEYS = "plan"
    HEADING = "The plan"

    def __init__(self, session: Session, path: Path, lead: str = "") -> None:
        super().__init__()
        self._session = session
        self._path = path
        self._lead = lead
        self._written: dict[str, tuple[str, Mapping[str, str]]] = {}
        """Each page that was written from here: its place, and the answers it was made of."""
        self._shown = False
        """Whether the sheet stands there, so that a later one comes in its place at once."""
        self._columns = 0
        """What the sheet was folded to."""
        self._finale: Finale | None = None

    def parts(self) -> ComposeResult:
        yield Words(self._lead, id="lead")
        with Horizontal(id="plan_page"):
            yield Rows(id="sections", markup=False)
            yield Picture(id="sheet")

    def offers(self, action: str) -> bool:
        return action != "soak" or bool(self._tests)

    def on_mount(self) -> None:
        self.query_one("#lead", Words).say(self._lead)
        self.query_one("#sheet", Picture).show("Working it out…")
        self.query_one("#sheet").focus()

    @work(thread=True, exclusive=True)
    def _work_out(self) -> None:
        # A long rainfall record takes seconds; the page must not stand still meanwhile.
        plan = self._session.plan
        try:
            with (
                telling_page(self.app, self._far),
                folded_to(self._columns),
                drawings_apart() as drawings,
            ):
                sheet = plan_text(plan)
                steps = tuple(next_steps.steps(plan))
                finale = Finale(overview(plan), _picture(plan), sheet, drawings, steps)
        except Stopped:
            return
        except Exception as trouble:
            self.app.call_from_thread(self._say_page, words.fault(trouble))
            return
        if not get_current_worker().is_cancelled:  # a later one may have been quicker
            self.app.call_from_thread(self._show, finale)

    def _far(self, said: str) -> None:
        if not self._shown:
            self._say_page(f"Working it out… {said}")

    def _say_page(self, said: str) -> None:
        if is_there(self):
            self.query_one("#sheet", Picture).show(said)

    def _show(self, finale: Finale) -> None:
        if not is_there(self):
            return
        self._shown, self._finale = True, finale
        self.query_one("#sheet", Picture).show(finale)
        sections = self.query_one("#sections", Rows)
        if [str(one.prompt) for one in sections.options] != finale.titles:
            sections.clear_options()
            sections.add_options(finale.titles)
            sections.highlighted = 0

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        """Go to a part of the plan."""
        if self._finale is not None:
            row = self._finale.places.get(str(event.option.prompt), 0)
            sheet = self.query_one("#sheet", Picture)
            sheet.scroll_to(y=row, animate=False)
            sheet.focus()

    def on_screen_resume(self) -> None:
        """Work the plan out anew: trying sizes out may have changed an answer."""
        self._say_what_is_old()
        self._columns = self._room
        if self._columns > 0:  # else the first layout is still to come, and calls again
            self._work_out()

    def _say_what_is_old(self) -> None:
        """Say of what was written here that an answer has changed since; else what was said."""
        now = self._session.answers.texts
        old = [f"the {name} in {at}" for name, (at, then) in self._written.items() if then != now]
        said = f"Older than your last change: {', '.join(old)}. Write it anew." if old else ""
        self.query_one("#lead", Words).say(said or self._lead)

    def on_resize(self, event: events.Resize) -> None:
        """Fold the sheet anew where its room has changed."""
        super().on_resize(event)
        self.call_after_refresh(self._fold)

    def _fold(self) -> None:
        if self._room != self._columns:
            self.on_screen_resume()

    @property
    def _room(self) -> int:
        """The columns there are for the sheet."""
        return self.query_one("#sheet").scrollable_content_region.width

    def action_page(self, pages: int) -> None:
        """Turn a page of the plan while the keys at the foot are gone to."""
        sheet = self.query_one("#sheet")
        (sheet.scroll_page_down if pages > 0 else sheet.scroll_page_up)(animate=False)

    def action_go_to(self) -> None:
        """Open the list of all answers; the plan closes with the one that is gone to."""
        from interview.screens.review import ReviewScreen

        def chosen(address: str | None) -> None:
            if address:
                self.dismiss(address)

        self.app.push_screen(ReviewScreen(self._session, None), chosen)

    def action_working(self) -> None:
        """List the figures, to see how each was got."""
        self.app.push_screen(WorkingScreen(self._session))

    def action_write(self) -> None:
        """Write the sheet beside the answers."""
        self._write(
            "sheet",
            "_plan.html",
            page_html,
            "Open it in a browser and print it: two pages, letter or A4.",
        )

    def action_jobs(self) -> None:
        """Write what to do outside beside the answers, with what to buy for it."""
        self._write(
            "job list",
            "-jobs.txt",
            outside_text,
            "Digging, levels, shopping list, plants and first year, as plain text: print it with "
            "lp or lpr and its name, or open it in any editor.",
        )

    def action_card(self) -> None:
        """Write the yard card beside the answers: one page to take outside."""
        self._write(
            "yard card",
            "-card.txt",
            card_text,
            "It is plain text: print it with lp or lpr and its name, or open it in any editor.",
        )

    def _write(self, name: str, ending: str, text: Callable[[Plan], str], how: str) -> None:
        """Write a page of the plan, and leave standing where it is and how to print it."""
        app, plan, answers = self.app, self._session.plan, self._session.answers.texts

        def make() -> None:
            try:
                with telling_page(app, self._far):
                    page = text(plan)
            except Exception as trouble:
                said = words.fault(trouble)
                app.call_from_thread(_say, app, said, Weight.WARNING)
                return
            app.call_from_thread(self._put, name, ending, page, how, answers)

        # Of the whole program: what was asked for is written though this page is left.
        app.run_worker(make, thread=True, group="sheet")

    def _put(self, name: str, ending: str, page: str, how: str, answers: Mapping[str, str]) -> None:
        try:
            place = write_sheet(self._path, page, ending)
        except OSError as trouble:
            why = trouble.strerror or "the folder does not take it"
            said = f"The {name} could not be written: {why}. Free some space or check the folder."
            _say(self.app, said, Weight.WARNING)
        else:
            at = af.shown(str(place))
            said = f"The {name} is in {at}."
            self._written[name] = (at, answers)
            self._lead = f"{said} {how}"
            if is_there(self):
                self.query_one("#lead", Words).say(self._lead)
            if not self.is_current:  # else it stands over the plan
                _say(self.app, said, Weight.PLAIN)


def _picture(plan: Plan) -> Drawing | None:
    """Return the garden from above; nothing while it has no size."""
    try:
        return pictures.planted_picture(plan)
    except (Unanswered, ValueError):
        return None


def _say(app: App[Any], said: str, weight: Weight) -> None:
    """Say on whatever page is on top how the writing went."""
    if isinstance(app, FramedApp):
        app.tell(said, weight)


def write_sheet(answers: Path, text: str, ending: str = "_plan.html") -> Path:
    """Write a page to a new file beside the answers; raises ``OSError``.

    ``ending`` ends its name. No file is ever written over: not the answers, their backup, nor an
    older sheet.
    """
    folder = answers.parent
    for _ in range(TRIES):
        place = af.free_name(folder, f"{answers.stem[:100] or 'garden'}{ending}")
        if af.belongs_to(answers, place):
            raise FileExistsError(17, "the name of the sheet is taken by the answers")
        try:
            with place.open("x", encoding="utf-8") as sheet:
                sheet.write(text)
        except FileExistsError:
            continue
        return place
    raise FileExistsError(17, "no free name was found")


class WorkingScreen(Page):
    """Every figure, and how the one chosen was got."""

    KEYS = "working"
    HEADING = "How each figure was got"

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session

    def parts(self) -> ComposeResult:
        yield Rows(id="figures", markup=False)
        with VerticalScroll(id="working_box"):
            yield Folded(id="working_text")

    def on_mount(self) -> None:
        self.query_one("#figures").focus()
        if self._session.plan.storms.has_long_sums:
            self._work_out()
        else:
            self._fill()

    @work(thread=True, exclusive=True)
    def _work_out(self) -> None:
        try:
            with telling_page(self.app, self._far):
                _ = self._session.plan.storms.zone_hours_record
        except Stopped:
            return
        except Exception as trouble:
            # Each figure that needs it says so in its line.
            self.app.call_from_thread(self._far, words.fault(trouble))
        self.app.call_from_thread(self._done)

    def _done(self) -> None:
        if is_there(self):
            self._fill()

    def _far(self, said: str) -> None:
        if is_there(self):
            self.query_one("#working_text", Words).update(f"Working it out… {said}")

    def _fill(self) -> None:
        plan = self._session.plan
        options = []
        for one in figures.found(plan):
            value = one.shown(plan.metric) if one.waits_for is None else "not known yet"
            said = Content.assemble(f"{one.figure.label}: ", (value, "bold"))
            options.append(Option(said, id=one.figure.key))
        self.query_one("#figures", OptionList).add_options(options)
        self.query_one("#figures", OptionList).highlighted = 0

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        lines = figures.working(event.option.id or "", self._session.plan)
        self.query_one("#working_text", Folded).fold(lambda columns: _working(lines, columns))


def _working(lines: Sequence[str], columns: int) -> Content:
    """Return how a figure was got; a line that is folded goes on under its own beginning."""
    first, *rest = lines
    parts = [(first, "bold $text")]
    for line in rest:
        under = " " * (len(line) - len(line.lstrip()) + 2)
        folded = "\n".join(textwrap.wrap(line, columns, subsequent_indent=under))
        lead, colon, said = folded.partition(": ")
        parts += [(f"\n{lead}{colon}", "$muted"), (said, "")]
    return Content.assemble(*parts)
