"""The garden drawn: from above, cut through, its pond in the storm, and the ways out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from textual import work
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.widgets import Button

from interview.asking.question import Unanswered
from interview.drawing.scene import Drawing
from interview.garden import pictures
from interview.garden.earth.profile import level_lines
from interview.garden.plan import Plan
from interview.garden.session import Session
from interview.screens import words
from interview.screens.long_wait import Stopped, telling_page
from interview.screens.page import Page
from interview.screens.parts import Press, is_there
from interview.screens.picture import Picture
from interview.sheet import size, soil

View = Callable[[Plan], "Iterator[Drawing | str]"]


def _above(plan: Plan) -> Iterator[Drawing | str]:
    if trouble := plan.size.room_trouble:
        yield f"The room is too small for all the rain. {trouble} They are on page 4."
    yield pictures.planted_picture(plan)
    if plan.size.bed_count > 1:
        yield f"One of {plan.size.bed_count} beds that are alike."


def _section(plan: Plan) -> Iterator[Drawing | str]:
    yield pictures.section_picture(plan)
    yield "\n".join(f" {line}" for line in level_lines(pictures.levels(plan), plan.metric))


def _pond(plan: Plan) -> Iterator[Drawing | str]:
    charts = pictures.pond_pictures(plan)
    if len(charts) > 1:
        yield f"{len(charts)} beds in a row, one chart each: scroll down from bed to bed."
    elif plan.size.bed_count > 1:
        yield f"One of {plan.size.bed_count} beds that are alike and share the water."
    yield from charts


NOTHING = "The garden fits its room, holds the rain, and its soil takes it. Nothing to change."


def _ways(plan: Plan) -> Iterator[Drawing | str]:
    _ = plan.size.garden
    found = list(size.ways(plan))
    slow = list(soil.slow(plan))
    if slow:  # of it no size makes a garden
        yield "The soil is slow. You could:\n\n"
        yield from paragraphs(slow)
    if found:
        yield "\n" if slow else ""
        yield "The garden does not fit its room, or does not hold the whole rain. You could:\n\n"
        yield from paragraphs(found)
        yield "\nF4 tries other sizes out; nothing is kept until you say so."
    if not found and not slow:
        yield NOTHING


VIEWS: tuple[tuple[str, View], ...] = (
    ("From above", _above),
    ("Cut through", _section),
    ("Pond", _pond),
    ("Options", _ways),
)


def paragraphs(lines: Iterable[str]) -> list[str]:
    """Return wrapped lines of the sheet put together again, a paragraph a line."""
    found: list[str] = []
    for line in lines:
        if found and found[-1] and line.startswith("  ") and line.strip():
            found[-1] += f" {line.strip()}"
        else:
            found.append(line)
    return found


class GardenScreen(Page):
    """One drawing at a time, to scale, as large as the window allows."""

    KEYS = "garden"
    HEADING = "The garden, drawn"

    def __init__(self, session: Session, view: int = 0) -> None:
        super().__init__()
        self._plan = session.plan
        self._view = view

    def parts(self) -> ComposeResult:
        with Horizontal(classes="buttons tabs"):
            for place, (name, _) in enumerate(VIEWS):
                yield Press(f" {place + 1} {name} ", f"view_{place}")
        yield Picture(id="drawing")

    def on_mount(self) -> None:
        self.query_one("#drawing").focus()
        self.action_view(self._view)

    def on_button_pressed(self, event: Button.Pressed) -> None:
        self.action_view(int((event.button.id or "view_0")[-1]))

    def action_turn(self, by: int) -> None:
        """Go to the view after, or before."""
        self.action_view((self._view + by) % len(VIEWS))

    def action_view(self, place: int) -> None:
        """Show one of the views."""
        self._view = place
        for at, (name, _) in enumerate(VIEWS):
            button = self.query_one(f"#view_{at}", Press)
            button.set_class(at == place, "current")
            # As wide whichever it is: a name that grows would be cut off.
            button.label = Content(f"[{at + 1} {name}]" if at == place else f" {at + 1} {name} ")
        self._work_out(place)

    @work(thread=True, exclusive=True, description="")
    def _work_out(self, place: int) -> None:
        # With a long rainfall record the ways out take seconds.
        try:
            with telling_page(self.app, lambda far: self._show(place, (f"Working it out… {far}",))):
                shown = view_parts(VIEWS[place][1], self._plan)
        except Stopped:
            return
        self.app.call_from_thread(self._show, place, shown)

    def _show(self, place: int, shown: tuple[Drawing | str, ...]) -> None:
        if is_there(self) and place == self._view:
            picture = self.query_one("#drawing", Picture)
            picture.show(*shown)
            picture.scroll_home(animate=False)


def view_parts(view: View, plan: Plan) -> tuple[Drawing | str, ...]:
    """Return what a view shows, or in words what it waits for."""
    try:
        return tuple(view(plan))
    except Unanswered as gap:
        question = gap.question.told(plan.answers)
        said = gap.why or question.find_out
        return (f"This waits for an answer: {question.label}.", said)
    except ValueError as wrong:
        return (str(wrong),)
    except Stopped:
        raise
    except Exception as trouble:
        return (words.fault(trouble),)
