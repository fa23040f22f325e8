"""Lists on plain lines: each line is taken by itself, kept at once, and said back."""

from __future__ import annotations

from interview.asking.keeping import none_half_typed
from interview.asking.kinds import Several, list_lines
from interview.asking.question import Status, Unanswered
from interview.asking.route import Heard, Step
from interview.garden.session import Session
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.results import area_so_far
from interview.reading import Refused, is_unknown

COMMANDS = """  A new row adds to these; an empty line goes on. :correct 2 ROW
  changes row 2, :strike 2 takes it out, :clear takes all of them away."""
MORE_ROWS = "Another row, or an empty line to go on."


def offer(session: Session, step: Step, text: str) -> Heard:
    """Keep ``text`` as the answer; what was half typed for it goes once that has worked."""
    with none_half_typed(session.drafts, step.address):
        return session.offer(step, text)


def lines_of(session: Session, step: Step) -> list[str]:
    """Return the lines so far: those kept, or those begun that are no answer yet."""
    if begun := _begun(session, step):
        return begun
    kept = step.view(session.answers).text(step.question) or ""
    return [] if is_unknown(kept) else list_lines(kept)


def _begun(session: Session, step: Step) -> list[str]:
    """Return the whole lines of a draft, whose last line is the one half typed."""
    return session.drafts.get(step.address, "").split("\n")[:-1]


def half_typed(session: Session, step: Step) -> str:
    """Return what was half typed and is no line yet."""
    return session.drafts.get(step.address, "").split("\n")[-1].strip()


def take(session: Session, step: Step, line: str) -> list[str]:
    """Add one line; return what is to be said of it. Raises ``Refused`` for it alone."""
    lines = lines_of(session, step)
    # A list that was good before is not good with this line; one that was too short may grow.
    good = bool(lines) and not _begun(session, step)
    _put(session, step, [*lines, line], may_wait=not good)
    # One line may hold several, parted by commas.
    places = range(len(lines) + 1, len(lines_of(session, step)) + 1)
    return [*(_said(session, step, place) for place in places), *_together(session, step)]


def _put(session: Session, step: Step, lines: list[str], may_wait: bool) -> str:
    """Keep the lines; return why they are no answer yet, where that is so and they may wait."""
    if reasons := session.shut(step):
        raise Refused(reasons[0])
    text = "\n".join(lines)
    try:
        with none_half_typed(session.drafts, step.address):
            session.keep_part(step, text)
    except Refused as refused:
        if not may_wait or not _each_reads(step, lines, session):
            raise
        session.drafts[step.address] = f"{text}\n"
        session.save()
        return str(refused)
    return ""


def _each_reads(step: Step, lines: list[str], session: Session) -> bool:
    """Tell whether only the list as a whole is wrong; raises ``Refused`` for a wrong line."""
    kind = step.question.kind
    if not isinstance(kind, Several):
        return False
    for line in lines:
        kind.each.read(line, step.view(session.answers))
    return True


def _said(session: Session, step: Step, place: int) -> str:
    """Return a line as it was understood."""
    return f"= {place}. {_understood(session, step, lines_of(session, step)[place - 1])}"


def _together(session: Session, step: Step) -> list[str]:
    """Return what all the lines make."""
    area = area_so_far(step.view(session.answers)) if step.question is surfacing.PIECES else ""
    return [area] if area else []


def _understood(session: Session, step: Step, line: str) -> str:
    kind, view = step.question.kind, step.view(session.answers)
    if not isinstance(kind, Several):
        return line
    try:
        return str(kind.each.echo(kind.each.read(line, view), view))
    except Unanswered:
        return line


def finish(session: Session, step: Step) -> Heard | None:
    """Take the list as it stands for the answer; return nothing where it is the answer already.

    Raises ``Refused`` or ``Doubt``.
    """
    if begun := _begun(session, step):
        return offer(session, step, "\n".join(begun))
    view = step.view(session.answers)
    if session.is_unfinished(step):
        return offer(session, step, view.text(step.question) or "")
    return offer(session, step, "") if view.standing(step.question) is Status.OPEN else None


def change(session: Session, step: Step, word: str, rest: str) -> list[str]:
    """Write a line anew or take it out; return what is to be said. Raises ``Refused``."""
    number, _, line = rest.partition(" ")
    lines = lines_of(session, step)
    if not number.isdecimal() or len(number) > 3:
        raise Refused(f"Write the number of the row after the command, such as :{word} 2.")
    place = int(number)
    if not 1 <= place <= len(lines):
        raise Refused(f"There is no row {place}; there are {len(lines)}.")
    if word == "correct":
        if not line.strip():
            raise Refused(f"Write the new row on the same line, after :{word} {place}.")
        waits = _put(session, step, [*lines[: place - 1], line.strip(), *lines[place:]], True)
        said = [_said(session, step, place), *_together(session, step)]
    else:
        said = [f"= taken out: {lines.pop(place - 1)}"]
        if lines:
            waits = _put(session, step, lines, True)
        else:
            waits = ""
            session.drafts.pop(step.address, None)
            session.clear(step)
    return [*said, f"! Not kept yet: {waits}"] if waits else said


def is_whole(session: Session, step: Step, word: str) -> bool:
    """Tell whether a line answers a list as a whole: none at all, or not known yet."""
    if list_lines(word) and not is_unknown(word):
        return False
    if there := len(lines_of(session, step)):
        raise Refused(
            f"The list holds {there} already. An empty line keeps it and goes on; :clear takes it "
            "away."
        )
    return True
