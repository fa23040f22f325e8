"""A page held on plain lines: what it asks is put, lines are heard, what came of them is said."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import partial

from interview.asking import own_fault, path, route
from interview.asking.keeping import none_half_typed
from interview.asking.kinds import list_lines, nothing_given
from interview.asking.question import UNKNOWN_TEXT, Status
from interview.asking.route import Heard, Step
from interview.asking.sitting import Doubt
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.run import soak_run
from interview.garden.survey.pacing_questions import WALKERS
from interview.garden.told_pages import said_at_once
from interview.garden.verdict_rows import KEEP, WAYS_OUT
from interview.garden.verdicts import verdict
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak
from interview.plain import told as plain_told
from interview.plain import ways as plain_ways
from interview.plain.commands import BARE, Left, Quit, Skipped, command
from interview.plain.read_out import TAKES_ALL, Reader, Say, packed, page
from interview.plain.turn import NumberedWay, Turn
from interview.quantities.evidence import Grade
from interview.reading import Refused, Suggested, read_yes_no
from interview.sheet.report import plan_text

Ask = Callable[[str], str]
"""Shows a prompt and returns one typed line; raises ``EOFError`` at the end of the input."""
GOES_ON = "Enter goes on: > "
STOPS = "Enter goes on, later stops here: > "
STOPS_WITH_ROWS = "Enter takes all and goes on, a number changes one, later stops here: > "
A_NUMBER = "Write one of the numbers, or an empty line to go on."


class Held:
    """The interview while it holds a page."""

    def __init__(self, session: Session, ask: Ask, say: Say) -> None:
        self.session, self.ask, self.say = session, ask, say
        self.reader = Reader(say)
        self.due = plain_told.DueTold()
        self.planned = False
        """Whether the plan was printed."""

    def _guarded(self, part: str, do: Callable[[], object]) -> None:
        """Do one part of what is said; where it meets a fault of the program, say so and go on."""
        try:
            do()
        except (Left, Quit, Skipped, EOFError):
            raise
        except Exception as trouble:
            self._fault(part, trouble)

    def _fault(self, part: str, trouble: Exception) -> None:
        self.say(f"  ! {own_fault.note(part, trouble)}")

    def _closed(self) -> None:
        """Say which questions were left out because their stage is shut."""
        session = self.session
        for step in path.steps(session.answers):
            if route.standing(step, session.answers) is not Status.OPEN:
                continue
            if reasons := session.shut(step):
                label = step.worded(session.answers).label
                self.reader.lines(f"Not asked yet, from '{label}' on: {' '.join(reasons)}", "")
                return

    def _plan(self) -> None:
        self.planned = True
        self.say("\n" + page(plan_text, self.session, self.say))

    # One page

    def _hold(self, turn: Turn) -> None:
        self._guarded("the part", partial(self.reader.head, self.session, turn))
        while True:
            self._guarded("what is due", partial(self.due.say, self.session, self.say))
            self._tell(turn)
            prompt = self._put(turn)
            if prompt is None:
                return
            text = self.ask(prompt)
            try:
                if not self._hear(turn, text):
                    return
            except (Left, Quit, Skipped, EOFError):
                raise
            except Exception as trouble:
                self._fault(f"what came of this line at {turn.place.name}", trouble)

    def _tell(self, turn: Turn) -> None:
        if turn.told or turn.alone or not turn.place.page.tells:
            return
        turn.told = True
        self._guarded("what this page tells", partial(self.reader.tell, self.session, turn))
        if turn.place.page.tells == "the_plan" and not self.planned:
            self._guarded("what was not asked", self._closed)
            self._guarded("the plan", self._plan)

    def _put(self, turn: Turn) -> str | None:
        """Read out what is put now, unless that was done; return the prompt, nothing at the end."""
        session, reader = self.session, self.reader
        if turn.ways:
            return "> "
        if (shut := turn.shut(session)) is not None:
            turn.about = None
            self._read(turn, f"shut {shut.address}", partial(reader.shut, session, turn, shut))
            return "> "
        if (step := turn.question(session)) is not None:
            self._read(turn, step.address, partial(reader.question, session, turn, step))
            return ". " if turn.begun else "> "
        if turn.taken or turn.alone:
            return None
        stops = turn.place.page.tells in ("end_of_today", "waiting")
        if turn.rows(session) or turn.behind(session):
            self._read(turn, "rows", partial(reader.rows, session, turn))
            if not turn.place.page.usual:
                return "Enter goes on, a number takes one: > "
            return STOPS_WITH_ROWS if stops else TAKES_ALL
        if turn.place.page.tells and not turn.boxes(session):
            return STOPS if stops else GOES_ON
        return self._take(turn)

    def _read(self, turn: Turn, name: str, read: Callable[[], None]) -> None:
        if turn.said == name:
            return
        turn.said = name
        self._guarded(f"all of {name}", read)

    def _take(self, turn: Turn) -> str | None:
        """Keep what was given to the page; return a prompt where it stays, nothing where not."""
        session = self.session
        if turn.at_once:
            turn.taken = True
            return None
        try:
            with none_half_typed(session.drafts, *turn.words):
                heard = session.take(turn.words)
        except (Refused, Doubt) as refused:
            self.reader.lines(f"! {refused}")
            if not session.at_fault:
                raise
            turn.words.pop(session.at_fault, None)
            turn.past.discard(session.at_fault)
            # The last box was given to the page alone, and may wait long for this one.
            plain_told.keep_half(session, turn.words, self.say)
            return self._put(turn)
        turn.taken = True
        turn.words = {}
        turn.past |= {one.address for one in turn.boxes(session)}
        self._report(turn, [one.step for one in heard])
        return self._put(turn)

    # One line

    def _hear(self, turn: Turn, text: str) -> bool:
        """Hear one line; tell whether the page is still held."""
        word = text.strip()
        meant, turn.meant = turn.meant, ""
        try:
            if word == ":skip" and self._at_rows(turn):
                return self._row(turn, "")
            if self._is_command(turn, word):
                command(self.session, turn, word.removeprefix(":").strip(), self.say)
                return True
            if meant and (yes := _yes_or_no(word)) is not None:
                if not yes:
                    self.say("  Then write it another way; :again reads the question.")
                    return True
                text = word = meant
            if turn.ways:
                return self._way(turn, word)
            if (step := turn.question(self.session)) is not None:
                self._answer(turn, step, text)
                return True
            return self._row(turn, word)
        except Suggested as near:
            turn.meant = near.meant
            self.reader.lines(f"! {near}")
        except (Refused, Doubt) as refused:
            again = isinstance(refused, Doubt) and not word
            more = " An empty line gives it again." if again else ""
            self.reader.lines(f"! {refused}{more}")
        return True

    def _is_command(self, turn: Turn, word: str) -> bool:
        if word.startswith(":"):
            return True
        if not re.fullmatch(BARE, word):
            return False
        first, _, rest = word.casefold().partition(" ")
        if first == "more":
            return bool(turn.behind(self.session))
        if first != "go":
            return True
        told, places = self.session.answers.told, self.session.way.places
        names = {one.name for one in places} | {told(one.page.title).casefold() for one in places}
        return bool(route.called(rest, self.session.answers)) or rest.strip() in names

    def _at_rows(self, turn: Turn) -> bool:
        rows = not turn.ways and bool(turn.rows(self.session))
        return rows and turn.question(self.session) is None

    def _way(self, turn: Turn, word: str) -> bool:
        """Take one of the numbered ways; tell whether the page is still held."""
        if not word:
            return self._keep(turn)
        if word.isdecimal() and 1 <= int(word[:4]) <= len(turn.ways):
            return self._to(turn, turn.ways[int(word[:4]) - 1])
        if turn.about is None:
            raise Refused(A_NUMBER)
        # Words that are no number of a way answer the question anew.
        about, turn.ways = turn.about, ()
        if about.question.key in turn.place.page.keys and not turn.alone:
            box = about.question.key in turn.place.page.asked
            turn.row, turn.taken = (None if box else about), False
        turn.past.discard(about.address)
        turn.said = about.address
        self._answer(turn, about, word)
        return True

    def _keep(self, turn: Turn) -> bool:
        if turn.about is None:
            return False
        turn.ways, turn.about = (), None
        turn.again()
        return not (turn.taken or turn.alone)

    def _to(self, turn: Turn, way: NumberedWay) -> bool:
        session = self.session
        if way.target == KEEP:
            return self._keep(turn)
        if way.target == WAYS_OUT:
            turn.ways = plain_ways.other_ways(session, turn.ways)
            self.reader.ways(turn.ways)
            return True
        if way.takes:
            self.reader.lines("\n".join(session.take_way(way.takes)))
            raise Left
        if not way.target:
            self.say("  Nothing is asked for that; an empty line goes on.")
            return True
        # What keeps a page shut is come back from to that page.
        gone = session.mend(way.target) if turn.about is None else session.go_to(way.target)
        if gone is None:
            raise Refused("That is not asked in this garden. Choose another number.")
        raise Left(way.target)

    def _row(self, turn: Turn, word: str) -> bool:
        """Hear a line at the rows; tell whether the page is still held."""
        session = self.session
        if not word:
            if turn.place.page.usual or turn.words:
                return self._take(turn) is not None
            return False
        rows, behind = turn.rows(session), turn.behind(session)
        number = int(word[:4]) if word.isdecimal() else 0
        if 1 <= number <= len(rows):
            turn.row = rows[number - 1]
        elif behind and number == len(rows) + 1:
            turn.more = True
        else:
            raise Refused(A_NUMBER)
        turn.again()
        return True

    def _answer(self, turn: Turn, step: Step, text: str) -> None:
        """Take one line for the question put. Raises ``Refused`` or ``Doubt``."""
        session = self.session
        if turn.place.page.tells == "timer":
            step, text = plain_soak.spoken(session, turn.place, step, text)
        whole = turn.whole(session.worded(step).kind, text)
        if whole is None:
            return
        word = (text := whole).strip()
        if step.question.kind.many:
            if word and not plain_lists.is_whole(session, step, word):
                self._add(turn, step, word)
                return
            offer, finish = plain_lists.offer, plain_lists.finish
            heard = offer(session, step, text) if word else finish(session, step)
            self._done(turn, step, heard, word)
        elif not word and step.view(session.answers).standing(step.question) is not Status.OPEN:
            self._done(turn, step, None)
        elif turn.at_once or (turn.row is not None and not turn.words):
            self._done(turn, step, plain_lists.offer(session, step, text), word)
        else:
            self._given(turn, step, text)

    def _given(self, turn: Turn, step: Step, text: str) -> None:
        """Note the words for a box; they are kept together with those of the others."""
        session, given = self.session, text.strip()
        if not given:
            usual = turn.usual(session, step)
            if usual is None and step.question.key not in session.answers.interview.optional:
                raise Refused(nothing_given(step.question.kind))
            text = usual if usual is not None else UNKNOWN_TEXT
        heard = session.read(step, text, turn.words)
        turn.words[step.address] = heard.kept
        turn.row = None
        turn.echo = _echo(step, heard, given)
        if turn.question(session) is not None or turn.rows(session) or turn.behind(session):
            echo, turn.echo = turn.echo, ""
            if echo:
                self.reader.lines(echo)
            plain_told.keep_half(session, {step.address: heard.kept}, self.say)

    def _done(self, turn: Turn, step: Step, heard: Heard | None, typed: str = "") -> None:
        """Go on from a question whose answer is kept."""
        listed = step.question.kind.many and turn.begun
        turn.row = None
        turn.past.add(step.address)
        if heard is not None and not listed:
            turn.echo = _echo(step, heard, typed)
        elif heard is not None and step.question in WALKERS:
            # Each line was said as it was added; what they make together was not.
            turn.echo = f"= {heard.echo}"
        if heard is not None or listed:
            self._report(turn, [step])
        turn.again()

    def _add(self, turn: Turn, step: Step, text: str) -> None:
        """Add each item of a line to the list; one that is refused keeps none of the others."""
        session = self.session
        take = plain_soak.take if step.question is timing.READINGS else plain_lists.take
        for item in list_lines(text):
            try:
                said = packed(take(session, step, item))
                for line in [*said, *([] if turn.begun else [plain_lists.MORE_ROWS])]:
                    self.say(f"  {line}")
            except (Refused, Doubt) as refused:
                self.reader.lines(f"! {refused}")
                continue
            turn.begun = True
            if remark := session.remark(step, item):
                self.reader.lines(f"! {remark}")
            plain_told.say_saved(session, self.say)

    # What came of it

    def _report(self, turn: Turn, steps: Sequence[Step]) -> None:
        """Say what the answers just kept mean, and offer what can be done about the worst."""
        session = self.session
        alarm, said, against = session.alarm, [turn.echo], list[str]()
        turn.echo = ""
        for step in steps:
            if remark := session.remark(step, step.view(session.answers).text(step.question) or ""):
                against.append(remark)
            said.append(said_at_once(session.plan, step))
            found = verdict(session.plan, step)
            if found is None:
                continue
            if found.grade is Grade.GOOD:
                said.append(found.line)
            elif not (alarm and found.grade is Grade.STOP):
                against.append(found.line)
            if found.stays and not turn.ways and not _under_way(session, step):
                turn.ways = tuple(NumberedWay(way.label, way.target) for way in found.ways)
                turn.about = step
        for line in packed(dict.fromkeys(one for one in said if one)):
            self.reader.lines(line)
        if alarm:
            self.reader.lines(f"!! {alarm}")
        for line in dict.fromkeys(against):
            self.reader.lines(f"! {line}")
        if not turn.begun and (changed := session.changed):
            self.reader.lines(changed)
        plain_told.say_changes(turn.before, session.answers, self.say)
        turn.before = session.answers
        plain_told.say_saved(session, self.say)
        self.reader.ways(turn.ways)


def _echo(step: Step, heard: Heard, typed: str) -> str:
    """Return how an answer was understood; nothing where that is what was typed, or was offered."""
    same = heard.echo.casefold().startswith(typed.casefold())
    return "" if same or heard.taken is None else f"= {heard.echo}"


def _under_way(session: Session, step: Step) -> bool:
    """Tell whether ``step`` is a list of readings to which more are still to come."""
    if step.question is not timing.READINGS:
        return False
    return not soak_run(step.view(session.answers), session.now).enough


def _yes_or_no(word: str) -> bool | None:
    try:
        return read_yes_no(word)
    except Refused:
        return None
