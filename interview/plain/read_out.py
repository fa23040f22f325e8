"""A page of the interview, read out on plain lines: its questions, rows, ways and what it tells."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence

from interview.asking import route
from interview.asking.kinds import InSteps, Options, Ticks
from interview.asking.long_work import HowFar, heard_by
from interview.asking.question import Question
from interview.asking.route import Step
from interview.garden import gate
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import said_line, said_words
from interview.garden.summary import WIDTH, in_words, wrap
from interview.garden.told_pages import told, usual_words
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak
from interview.plain.turn import NumberedWay, Turn

Say = Callable[[str], None]
LONG = 4000
"""Lines or days of a record from which on it is said how far the sums are."""
MOST_OPTIONS = 12
"""More options than these are named only when they are asked for; a choice of ours."""
_SENTENCE = r"\S.*?[.!?](?=\s|$)|\S.*$"
YES_OR_NO = "yes or no"
TAKES_ALL = "Enter takes all, a number changes one: > "
"""The prompt under rows of usual values."""


class Reader:
    """Reads pages out, and says each caution whole only once."""

    def __init__(self, say: Say) -> None:
        self.say = say
        self._cautioned: set[str] = set()
        self._hinted: set[str] = set()
        self._stage = ""

    def lines(self, text: str, indent: str = "  ", further: str = "  ") -> None:
        """Say ``text`` folded to the width of the sheet."""
        for part in text.split("\n"):
            folded = wrap(part, further)
            if len(indent) + len(folded[0]) > WIDTH:
                folded = wrap(f"{indent}{part}", further)
                indent = ""
            self.say("\n".join([indent + folded[0], *folded[1:]]))
            indent = further

    def head(self, session: Session, turn: Turn) -> None:
        """Say which part of the interview begins, where one does."""
        for one in session.way.progress():
            # What only tells something says itself where it stands.
            if turn.place.page.tells and turn.place.page.tells != "timer":
                return
            if one.stage.key == turn.place.page.stage != self._stage:
                self._stage = one.stage.key
                self.say(f"\n== {session.answers.told(one.stage.title)}: {one.word} ==")
                turn.headed = True

    def _begin(self, turn: Turn) -> None:
        """Set a page off from the one before."""
        if not turn.headed:
            self.say("")
        turn.headed = True

    def tell(self, session: Session, turn: Turn) -> None:
        """Say what the page tells."""
        self._begin(turn)
        for line in packed(told(session, turn.place)):
            self.lines(line, "")

    def question(self, session: Session, turn: Turn, step: Step) -> None:
        """Read a question out, with what is kept for it."""
        view = step.view(session.supposing(turn.words))
        question = session.worded(step, turn.words)
        self._begin(turn)
        if turn.half and isinstance(question.kind, InSteps):
            self.lines(question.kind.further, "")
            for line in packed(_numbered(question.kind.sorts)):
                self.lines(line, "  ", "    ")
            return
        hint = self._hint(question, view.units)
        value = self._value(session, turn, step)
        brief = ""
        if hint == YES_OR_NO:
            brief, hint, value = f" ({'; '.join([hint, *value])})", "", []
        self.lines(f"{_lead(session, step)}{question.text}{brief}", "")
        self.caution(session, turn, step)
        how = [*_options(question), *([hint] if hint else [])]
        for line in packed([*how, *value]):
            self.lines(line, "  ", "    ")
        if back := session.back_to:
            self.say(f"  (Then back to '{back.question.label}'.)")
        plain_soak.say_run(session, step, self.say)
        if question.kind.many:
            self._list(session, step)

    def caution(self, session: Session, turn: Turn, step: Step) -> None:
        """Say the caution of a question once a page; what was said before by its beginning."""
        said = step.worded(session.answers).caution_in(step.view(session.answers))
        if beware := session.beware(step):
            self.lines(f"CAUTION: {beware}", "  ", "    ")
        if not said or said in turn.cautioned:
            return
        turn.cautioned.add(said)
        first, *others = re.findall(_SENTENCE, said)
        new = [one for one in others if one not in self._cautioned]
        self._cautioned.update((first, *others))
        self.lines(f"CAUTION: {' '.join((first, *new))}", "  ", "    ")

    def _hint(self, question: Question[object], units: str) -> str:
        """Return how an answer is written, the first time that this is said."""
        if getattr(question.kind, "options", ()):
            return ""
        hint = question.kind.hint(units)
        if hint in self._hinted:
            return ""
        if hint != YES_OR_NO:
            self._hinted.add(hint)
        return hint

    def _value(self, session: Session, turn: Turn, step: Step) -> list[str]:
        """Return what Enter does, and what was half typed."""
        many = step.question.kind.many
        view = step.view(session.answers)
        kept = view.text(step.question)
        lines = []
        half = (
            plain_lists.half_typed(session, step) if many else session.drafts.get(step.address, "")
        )
        if half.strip() and half != session.offered(step, turn.words):
            lines.append(f"half typed before, not kept: {half.strip()}")
        if kept is not None and not (many and plain_lists.lines_of(session, step)):
            kind = step.question.kind
            # Times are told as people say them, a choice by its words.
            timed = said_words(kind, kept)
            plain = timed if timed != kept else usual_words(session, step, kept)
            words = plain.replace("\n", "; ") or "none"
            lines.append(f"kept: {words}; Enter keeps it")
        elif kept is None and not (many and plain_lists.lines_of(session, step)):
            offered = session.offered(step, turn.words)
            if offered:
                lines.append(f"Enter takes: {usual_words(session, step, offered)}")
            elif step.question.key in session.answers.interview.optional:
                lines.append("Enter skips")
        return lines

    def _list(self, session: Session, step: Step) -> None:
        """Say the lines of a list so far."""
        lines = plain_lists.lines_of(session, step)
        if step.question is timing.READINGS and not session.shut(step):
            return
        for place, line in enumerate(lines, 1):
            self.say(f"  kept {place}. {said_line(line)}")
        if lines and step.question is not timing.READINGS:
            self.say(plain_lists.COMMANDS)

    def rows(self, session: Session, turn: Turn) -> None:
        """Read the rows of usual values out, numbered."""
        rows, behind = turn.rows(session), turn.behind(session)
        head: list[str] = []
        self._begin(turn)
        if fresh := session.fresh():
            head = [f"{len(fresh)} new:"]
        elif turn.place.page.usual and not (turn.place.page.tells or turn.place.page.asked):
            head = [f"{session.answers.told(turn.place.page.title)}:"]
        said = [f"{number} {row_words(session, turn, step)}" for number, step in enumerate(rows, 1)]
        if behind:
            said.append(f"{len(rows) + 1} more ({behind})")
        for line in packed([*head, *said]):
            self.lines(line, "  " if not head else "", "    ")
            head = []

    def ways(self, ways: Sequence[NumberedWay]) -> None:
        """Read numbered ways out."""
        for number, way in enumerate(ways, 1):
            self.lines(f"{number} {way.label}", "  ", "    ")

    def shut(self, session: Session, turn: Turn, step: Step) -> None:
        """Say why a question is shut, what can be done about it, and what Enter does meanwhile."""
        label = step.worded(session.answers).label
        reasons = session.shut(step)
        self._begin(turn)
        self.lines(f"Not yet: {_lead(session, step)}{label}. {' '.join(reasons)}", "")
        today = session.now.date()
        ways = gate.ways_out(step, session.answers, today)
        turn.ways = tuple(NumberedWay(session.answers.told(w.label), w.address or "") for w in ways)
        self.ways(turn.ways)
        ahead = session.way.after(turn.place)
        meanwhile = session.answers.told(ahead.page.title).lower() if ahead else "the end"
        self.say(f"  Enter: meanwhile {meanwhile}")


def row_words(session: Session, turn: Turn, step: Step) -> str:
    """Return a row as its label and the value it has now."""
    label = step.worded(session.answers).label
    words = turn.usual(session, step)
    if words is None:
        return f"{label}: {session.not_yet(step) or 'not given'}"
    return f"{label}: {usual_words(session, step, words)}".replace("\n", "; ")


def _lead(session: Session, step: Step) -> str:
    """Name the thing that is asked about, where there are several or it has a name."""
    item = route.item_name(step, session.answers)
    several = len(session.answers.numbers(step.question.group)) > 1 if step.number else False
    if not item or not (several or step.number > 1 or "," in item):
        return ""
    return f"{item[0].upper()}{item[1:]}: "


def _options(question: Question[object]) -> list[str]:
    options = getattr(question.kind, "options", ())
    if isinstance(question.kind, InSteps):
        options = question.kind.first
    if not options:
        return []
    many = "any, such as 1, 3, or none" if isinstance(question.kind, Ticks) else ""
    if len(options) > MOST_OPTIONS:
        return [f"its name; :options lists all {len(options)}", *([many] if many else [])]
    return [*_numbered(options), *([many] if many else [])]


def option_lines(question: Question[object]) -> list[str]:
    """Return every option of a question, however many, in few lines."""
    options = getattr(question.kind, "options", ())
    if isinstance(question.kind, InSteps):  # a number is that of a step, not of a whole answer
        return packed([label for _, label in options])
    return packed(_numbered(options))


def _numbered(options: Options) -> list[str]:
    return [f"{number} {label}" for number, (_, label) in enumerate(options, 1)]


def packed(parts: Iterable[str]) -> list[str]:
    """Return ``parts`` on as few lines as hold them, each part whole where it can be."""
    lines: list[str] = []
    for part in parts:
        if lines and len(lines[-1]) + len(part) + 4 <= WIDTH:
            lines[-1] += f"  {part}"
        else:
            lines.append(part)
    return lines


def page(text: Callable[..., str], session: Session, say: Say, pictures: bool = False) -> str:
    """Return a page of the plan, its drawings in words unless ``pictures`` are wanted.

    Where years of rain take long, say meanwhile how far they are.
    """
    with heard_by(Teller(say)), in_words(not pictures):
        return text(session.plan)


class Teller:
    """Says on plain lines how far a long sum is: when it begins, and at each quarter of it."""

    def __init__(self, say: Say) -> None:
        self._say = say
        self._last: tuple[str, int] = ("", 0)

    def __call__(self, far: HowFar) -> None:
        quarter = 4 * far.done // max(1, far.of)
        if far.of >= LONG and (far.what, quarter) != self._last:
            self._last = (far.what, quarter)
            self._say(f"  ({far.words})")
