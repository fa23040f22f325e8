"""The interview on plain lines: for pipes, screen readers and bare terminals."""

from __future__ import annotations

from functools import partial

from interview.asking import path
from interview.asking.path import Place
from interview.asking.question import Status
from interview.garden import soak_due
from interview.garden.due_keys import leads_from
from interview.garden.due_words import Due, GardenState
from interview.garden.session import Session
from interview.garden.verdicts import verdict
from interview.plain import told as plain_told
from interview.plain.commands import Left, Quit, Skipped, command
from interview.plain.held import Ask, Held
from interview.plain.read_out import Say
from interview.plain.turn import NumberedWay, Turn, turn_at
from interview.reading.foreign import lines_shown


def run(session: Session, ask: Ask, say: Say) -> bool:
    """Go along the path on plain lines; tell whether the plan was reached."""
    return _Talk(session, ask, lambda text: say(lines_shown(text))).run()


class _Talk(Held):
    """The interview as it goes from page to page."""

    stopped = ""
    """The answer that stops the garden, where the person who comes back stands at it."""
    named = ""
    """Where the person who comes back is to look first."""

    def run(self) -> bool:
        turn, named, back = None, "", False
        self._guarded("where the garden stands", self._begin)
        if self.named:
            named, back = self.named, True
        try:
            while (place := self._place()) is not None:
                turn = self._turn(place, turn, named, back)
                named, back = "", False
                try:
                    self._hold(turn)
                    if self._forward() is None:
                        break
                except Left as left:
                    named, back = left.named, True
                except Skipped:
                    if self._forward() is None:
                        break
                except (Quit, EOFError, KeyboardInterrupt):
                    raise
                except Exception as trouble:
                    # One line is read: a fault that stays cannot ask the same for ever.
                    self._fault(f"what came of this line at {place.name}", trouble)
                    try:
                        self._guarded("that command", partial(self._heard_after_a_fault, turn))
                    except Left as left:
                        named, back = left.named, True
                    except Skipped:
                        continue
        except (Quit, EOFError, KeyboardInterrupt):
            self._guarded("where this stopped", self._stopped)
            return self.planned
        self.say("\nThat was the last page.")
        self._guarded("what was not asked", self._closed)
        if not self.planned:
            self._guarded("the plan", self._plan)
        return True

    # Going along

    def _begin(self) -> None:
        """Say how to answer, or where a garden that was begun before stands; go where it waits."""
        session = self.session
        if not session.answers.texts:
            plain_told.say_greeting(session, self.say)
            return
        due = plain_told.say_standing(session, self.say)
        # A soak test does not wait: whoever comes back comes back to it.
        if look := soak_due.first(session.answers, session.now):
            session.begin_at(look.address)
            self.named = look.address
            lead = "!! " if look.is_due else ""
            self.reader.lines(f"{lead}{look.words(session.answers)}", "", "   ")
        elif self._led(due) and session.begin_at(due.target):
            self.named = due.target
            self.stopped = due.target if due.state is GardenState.STOP else ""

    def _led(self, due: Due) -> bool:
        """Tell whether whoever comes back is led to what is due, from the page it was left at."""
        session = self.session
        if session.drafts:
            return False
        place = self._place()
        interview = session.answers.interview
        here = [*place.addresses(place.page.keys, interview)] if place else []
        return leads_from(due, here, session.left_open)

    def _place(self) -> Place | None:
        """Return the place reached; of a question on no page, one of its own."""
        session = self.session
        if session.place is not None or session.step is None:
            return session.place
        return path.place_of(session.step.address, session.answers, singly=True)

    def _turn(self, place: Place, last: Turn | None, named: str, gone_to: bool) -> Turn:
        turn = turn_at(self.session, place, named)
        if named and named == self.stopped:
            self._ways_from(turn)
        if self.session.place is None and self.session.step is not None:
            turn.alone = self.session.step.address
        if last is not None and last.place == place:
            turn.told = last.told
        if not (gone_to or turn.alone):
            # What was answered before is not put again beside what is open.
            boxes, way = self.session.way.boxes(place), self.session.way
            if way.wanted(place):
                done = [one for one in boxes if way.status(one) not in (Status.OPEN, Status.FAULTY)]
                turn.past |= {one.address for one in done}
        return turn

    def _ways_from(self, turn: Turn) -> None:
        """Put the ways on from what stops a garden at its spot, as they were when it was said."""
        self.stopped, step = "", self.session.step
        found = verdict(self.session.plan, step) if step else None
        if found is not None and found.ways:
            turn.ways = tuple(NumberedWay(way.label, way.target) for way in found.ways)
            turn.about, turn.taken = step, True
            turn.past |= {one.address for one in turn.boxes(self.session)}
            self.reader.head(self.session, turn)
            self.reader.ways(turn.ways)

    def _forward(self) -> object:
        session = self.session
        if session.place is None:
            return session.go_on_open()
        return session.forward()

    def _stopped(self) -> None:
        self.say(f"\nStopped at: {plain_told.where(self.session)}.")

    def _heard_after_a_fault(self, turn: Turn) -> None:
        word = self.ask("> ").strip()
        if word.startswith(":"):
            command(self.session, turn, word.removeprefix(":").strip(), self.say)
