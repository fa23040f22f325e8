"""The picture beside a question: what is measured there, drawn anew as it is typed.

What a picture is made of is loaded when the first one is drawn.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any, NamedTuple

from textual import events, work
from textual.message import Message
from textual.strip import Strip

from interview.asking import own_fault, route
from interview.asking.path import Place
from interview.asking.route import Step
from interview.garden.scenes import scene_of
from interview.garden.session import Session
from interview.screens.after_typing import FollowsTyping
from interview.screens.page import framed
from interview.screens.parts import is_there
from interview.screens.strips import Strips

if TYPE_CHECKING:
    from interview.drawing.scene import Drawing
    from interview.garden.plan import Plan


class Wanted(NamedTuple):
    """What is to be drawn, and for what room."""

    plan: Plan
    place: Place
    step: Step | None
    typed: tuple[tuple[str, str], ...]
    """Words typed at this place, by address."""
    size: tuple[int, int]
    theme: str
    """The name of the colors; empty where there are none."""

    def same(self, other: Wanted | None) -> bool:
        """Tell whether another one is drawn in the same way."""
        return other is not None and self.plan is other.plan and _of(self) == _of(other)


def _of(one: Wanted) -> tuple[object, ...]:
    return (one.place, one.step, one.typed, one.size, one.theme)


class LivePicture(Strips, FollowsTyping):
    """Shows what is measured, a little later: no key waits for it.

    Of several pictures wanted while one is drawn the last alone is.
    """

    class Pictured(Message):
        """The picture of a place was drawn, or there is none of it."""

        def __init__(self, place: Place, there: bool) -> None:
            super().__init__()
            self.place = place
            self.there = there

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._session: Session | None = None
        self._place: Place | None = None
        self._step: Step | None = None
        self._typed: tuple[tuple[str, str], ...] = ()
        self._shown: Wanted | None = None
        self._busy = False
        self._waits = True
        """For the plan so far, as one opens a garden: both at once would bring that late."""
        self.drawing: Drawing | None = None
        """What is shown."""

    def on_mount(self) -> None:
        """Paint anew in other colors when these change."""
        self.app.theme_changed_signal.subscribe(self, lambda _: self._begin())

    def on_resize(self, _event: events.Resize) -> None:
        """Draw to the new size."""
        self._begin()

    def show(
        self, session: Session, place: Place, step: Step | None, typed: Mapping[str, str]
    ) -> None:
        """Draw what is measured at ``place`` now."""
        if self._place is None or scene_of(place) is not scene_of(self._place):
            self._clear()
        self._session, self._place, self._step = session, place, step
        self._typed = _typed(typed)
        self._begin()

    def follow(self, typed: Mapping[str, str]) -> None:
        """Draw with the words ``typed`` at this place supposed, once typing rests."""
        if self._place is None:
            return
        self._typed = _typed(typed)
        self.once_typing_rests(self._begin)

    def wait_no_longer(self) -> None:
        """Draw from here on: the plan so far stands."""
        if self._waits:
            self._waits = False
            self._begin()

    def forget(self) -> None:
        """Show nothing."""
        self._session, self._place = None, None
        self._clear()

    def _clear(self) -> None:
        self._shown, self.drawing = None, None
        self.keep([])

    def _wanted(self) -> Wanted | None:
        session, place = self._session, self._place
        if session is None or place is None or not self.size.area:
            return None
        theme = "" if self.app.no_color else self.app.theme
        size = (self.size.width, self.size.height)
        return Wanted(session.plan, place, self._step, self._typed, size, theme)

    def _begin(self) -> None:
        wanted = self._wanted()
        if self._busy or self._waits or wanted is None or self._session is None:
            return
        if wanted.same(self._shown):
            return
        self._busy = True
        self._draw(self._session, wanted)

    @work(thread=True, group="plan", exit_on_error=False, description="")
    def _draw(self, session: Session, wanted: Wanted) -> None:
        from interview.garden.live_picture import live_picture
        from interview.screens.picture import in_room
        from interview.screens.themes import OF

        drawing, strips = None, list[Strip]()
        try:
            plan = wanted.plan
            if wanted.typed:
                plan = plan.with_answers(route.in_force(session.supposing(dict(wanted.typed))))
            with framed(self).beside_keys():
                drawing = live_picture(plan, wanted.place, wanted.step)
            if drawing is not None:
                palette = OF[wanted.theme] if wanted.theme else None
                strips = in_room(drawing.bare, *wanted.size, palette)
        except Exception as trouble:  # told where the plan is asked for
            own_fault.note("the picture beside a question", trouble)
        self.call_later(self._done, wanted, drawing, strips)

    def _done(self, of: Wanted, drawing: Drawing | None, strips: list[Strip]) -> None:
        self._busy = False
        if not is_there(self):
            return
        now = self._wanted()
        if now is None:
            return
        if now.place == of.place:
            self._shown, self.drawing = of, drawing
            self.keep(strips)
            framed(self).paint_first()
            self.post_message(self.Pictured(of.place, drawing is not None))
        self._begin()


def _typed(words: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    return tuple((address, text) for address, text in words.items() if text.strip())
