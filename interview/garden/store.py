"""Between the answers in memory and the answers file: load, keep, list what is wrong."""

from __future__ import annotations

import os
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import field
from pathlib import Path
from typing import Any

from interview import answers_file as af
from interview.answers_file import Fingerprint, Node, Parsed, Tree, Trouble, own_files
from interview.asking.answers import Answers
from interview.asking.keeping import NotKept
from interview.asking.kinds import Ticks
from interview.asking.question import Group, Question, Status
from interview.asking.statuses import written_by
from interview.garden.file_form import (
    BESIDE,
    HALF_TYPED,
    STOPPED_AT,
    USUAL_TAKEN,
    answer_of,
    notes,
    order,
    text_of,
    tree_of,
)
from interview.garden.stages import (
    GROUPS,
    QUESTIONS,
    STAGE_OF,
    STAGES,
    new_answers,
    question_at,
)
from interview.quantities.records import record

COPIES_KNOWN = 200
"""So many copies are remembered as made by this program, so that no others are replaced."""


@record(frozen=False)
class Loaded:
    """An answers file as it was read: its answers, and everything that is wrong with it."""

    answers: Answers
    troubles: list[Trouble]
    parsed: Parsed
    stopped_at: str
    read_only: bool = False
    drafts: dict[str, str] = field(default_factory=dict)
    """What was typed and not yet taken as an answer, by address."""
    taken: list[str] = field(default_factory=list)
    """The pages whose usual values were taken whole."""


@record(frozen=False)
class _AnswersReader:
    parsed: Parsed
    texts: dict[str, str] = field(default_factory=dict)
    paths: dict[str, tuple[str | int, ...]] = field(default_factory=dict)
    troubles: list[Trouble] = field(default_factory=list)
    drafts: dict[str, str] = field(default_factory=dict)
    taken: list[str] = field(default_factory=list)

    def line(self, path: tuple[str | int, ...]) -> int:
        return self.parsed.line_of(path)

    def trouble(self, path: tuple[str | int, ...], sentence: str, suggestion: str = "") -> None:
        key = ".".join(str(part + 1 if isinstance(part, int) else part) for part in path)
        self.troubles.append(Trouble(self.line(path), key, sentence, suggestion))

    def read(self) -> None:
        stages = {stage.key: stage for stage in STAGES}
        for name, section in self.parsed.tree.items():
            if name == HALF_TYPED:
                self._half_typed(section)
            if name == USUAL_TAKEN:
                self._usual_taken(section)
            if name in BESIDE:
                continue
            if name not in stages:
                self._strange((name,), list(stages))
            elif not isinstance(section, dict):
                if section != "":
                    self.trouble((name,), "A list of answers by name belongs here. This is kept.")
            else:
                self._section(name, section)

    def _half_typed(self, section: Node) -> None:
        if not isinstance(section, dict):
            if section != "":
                self.trouble(
                    (HALF_TYPED,), ("Words by name belong here. This is kept, but not used.")
                )
            return
        for address, node in section.items():
            text = text_of(node)
            if text is not None:
                self.drafts[address] = text
            else:
                self.trouble(
                    (HALF_TYPED, address), ("Words belong here. This is kept, but not used.")
                )

    def _usual_taken(self, section: Node) -> None:
        if not isinstance(section, list):
            if section != "":
                self.trouble(
                    (USUAL_TAKEN,), "A list of pages belongs here. This is kept, but not used."
                )
            return
        for place, node in enumerate(section):
            if isinstance(node, str):
                self.taken.append(node)
            else:
                said = "The name of a page belongs here. This is kept, but not used."
                self.trouble((USUAL_TAKEN, place), said)

    def _section(self, stage: str, section: Tree) -> None:
        groups = [group.key for group in GROUPS.values() if STAGE_OF[group.key].key == stage]
        plain = [q.key for q in QUESTIONS.values() if STAGE_OF[q.key].key == stage and not q.group]
        for name, node in section.items():
            path = (stage, name)
            if name in groups:
                self._group(GROUPS[name], node, path)
            elif name in plain:
                self._answer(QUESTIONS[name], name, node, path)
            else:
                self._strange(path, groups + plain)

    def _group(self, group: Group, node: Node, path: tuple[str | int, ...]) -> None:
        if not isinstance(node, list):
            if node != "":
                self.trouble(path, f"A list belongs here, with one item for each {group.label}.")
            return
        keys = [question.key for question in group]
        for place, item in enumerate(node):
            if not isinstance(item, dict):
                self.trouble((*path, place), f"This {group.label} has no answers by name.")
                continue
            for name, value in item.items():
                here = (*path, place, name)
                if name in keys:
                    self._answer(QUESTIONS[name], f"{group.key}.{place + 1}.{name}", value, here)
                else:
                    self._strange(here, keys)

    def _answer(
        self, question: Question[Any], address: str, node: Node, path: tuple[str | int, ...]
    ) -> None:
        text = answer_of(question, node)
        if text is None:
            self.trouble(path, "One answer belongs here, not a list. This is kept, but not used.")
        elif text.strip():
            self.texts[address] = text
            self.paths[address] = path
        elif isinstance(node, list) and isinstance(question.kind, Ticks):
            # A script that was told nothing writes an empty list too.
            self.trouble(path, "An empty list says nothing. Write none if there is none of these.")

    def _strange(self, path: tuple[str | int, ...], known: list[str]) -> None:
        from difflib import get_close_matches

        name = str(path[-1])
        near = get_close_matches(name, known, 1, 0.6)
        elsewhere = STAGE_OF.get(name)
        if elsewhere is not None and name not in known:
            said = f"This name belongs elsewhere, under {elsewhere.key}. It is kept, but not used."
        else:
            said = "This name is not one of the interview's. It is kept, but not used."
        self.trouble(path, said, near[0] if near else "")


def interpret(parsed: Parsed) -> Loaded:
    """Return the answers of a parsed file and every trouble, by line."""
    reader = _AnswersReader(parsed)
    reader.read()
    answers = _on_lines(new_answers(reader.texts))
    for address, path in reader.paths.items():
        found = question_at(address)
        if found is None:
            continue
        question, number = found
        view = answers.at(question.group, number) if number else answers
        if view.standing(question) is Status.FAULTY:
            reader.trouble(path, view.fault(question) or "")
    troubles = sorted([*parsed.troubles, *reader.troubles], key=lambda one: one.line)
    stopped = parsed.tree.get(STOPPED_AT)
    return Loaded(
        answers,
        troubles,
        parsed,
        stopped if isinstance(stopped, str) else "",
        parsed.read_only,
        reader.drafts,
        reader.taken,
    )


def _on_lines(answers: Answers) -> Answers:
    """Return the answers with each list put on lines by its items."""
    texts = dict(answers.texts)
    for address, text in answers.texts.items():
        found = question_at(address) if "," in text or "\n" in text else None
        if found is not None:
            question, number = found
            view = answers.at(question.group, number) if number else answers
            with suppress(Exception):  # told where the answer is read
                if not view.reads_as_written(question):
                    texts[address] = question.parted(text, view)
    return answers.with_texts(texts) if texts != answers.texts else answers


def load(path: Path) -> tuple[Loaded, Fingerprint]:
    """Read an answers file; raises ``NotLoaded`` or ``Unreadable`` with one sentence."""
    parsed, mark = af.load(path)
    return interpret(parsed), mark


class FileKeeper:
    """Keeps the answers in one file, editing it in place so that nothing of it is lost."""

    def __init__(
        self,
        path: Path,
        written_by: str,
        loaded: Loaded | None = None,
        mark: Fingerprint | None = None,
    ) -> None:
        self.path = path
        self.note = ""
        """Something to tell about the last save, such as that its permanence is unconfirmed."""
        self.drafts: dict[str, str] = dict(loaded.drafts) if loaded else {}
        """What is half typed, by address; the session holds the same one."""
        self.taken: list[str] = list(loaded.taken) if loaded else []
        """The usual pages taken whole; the session holds the same list."""
        self._home = af.real(path)
        """Where the file lay when it was opened: a link put there since is not followed."""
        self._written_by = written_by
        self._mark = mark
        self._text = loaded.parsed.text if loaded else ""
        self._tree: Tree = loaded.parsed.tree if loaded else {}
        self._known: set[str] = set(loaded.answers.texts) if loaded else set()
        self._read_only = loaded.read_only if loaded else False
        self._backed_up = loaded is None
        self._told = ""
        """What is still to be told of the copy that was made."""

    @property
    def read_only(self) -> bool:
        """Tell whether the file is only read, since a newer program wrote it."""
        return self._read_only

    def keep(self, answers: Answers, stopped_at: str) -> None:
        """Write the answers; raises ``NotKept``."""
        if self._read_only:
            raise NotKept("This file was written by a newer program, so it is only read here.")
        self.note = ""
        drafts = self._writable_drafts()
        tree = tree_of(answers, self._tree, self._known, stopped_at, drafts, tuple(self.taken))
        if self._text and af.same(tree, self._tree) and self.there:
            return
        try:
            text = self._text_for(tree)
            self._back_up()
            saved = af.save(self.path, text, expect=self._mark)
            self._mark = saved.fingerprint
            sure = "" if saved.durable else "The disk has not confirmed that it is permanent."
            self.note = " ".join(said for said in (self._told, saved.note or sure) if said)
            self._told = ""
        except af.Removed as trouble:
            self._write_again(text, str(trouble))
        except af.Changed as trouble:
            self._step_aside(text, str(trouble))
        except (af.NotSaved, af.Unwritable) as trouble:
            raise NotKept(str(trouble)) from None
        self._text = text
        self._tree = af.parse(text.encode()).tree
        self._known = set(answers.texts)

    def _back_up(self) -> None:
        """Once in a session, before the first change: copy the file as it was."""
        if self._backed_up:
            return
        place = own_files.place("copies", "XDG_STATE_HOME", ".local/state", os.environ)
        ours = own_files.read(place, COPIES_KNOWN * 65).decode("ascii", "ignore").split()
        self._told = af.backup(self.path, self._mark, ours)
        self._backed_up = True
        own_files.write(place, "".join(f"{one}\n" for one in ours[-COPIES_KNOWN:]).encode())

    def _writable_drafts(self) -> dict[str, str]:
        # What no file can hold must not keep the answers out of it.
        return {a: text for a, text in dict(self.drafts).items() if not af.unwritable(text)}

    @property
    def there(self) -> bool:
        """Tell whether there is anything where the file was written last."""
        return os.path.lexists(self.path)

    def _write_again(self, text: str, why: str) -> None:
        """Put back a file that something else has removed."""
        try:
            self._mark = af.save(self._home, text, expect=None).fingerprint
        except af.Changed:
            self._step_aside(text, why)
            return
        except af.NotSaved as trouble:
            raise NotKept(f"{why} {trouble}") from None
        self.note = (
            f"{af.shown(self.path.name)} was removed by something else. It is written again, with "
            "all your answers."
        )

    def _step_aside(self, text: str, why: str) -> None:
        """Go on in a file of our own beside one that something else has changed: both are kept."""
        data = text.encode()
        try:
            place = af.save_beside(self._home, data, "mine")
        except af.NotSaved:
            raise NotKept(why) from None
        self.note = (
            f"{af.shown(self.path.name)} was changed by something else and is left as it is. Your "
            f"answers are now kept in {af.shown(place.name)}."
        )
        self.path = self._home = place
        self._mark = Fingerprint.of(data)

    def rescue(self, answers: Answers, folders: Iterable[Path]) -> Path | None:
        """Write the answers whole into the first folder that takes them; where they are.

        Nobody else may read them: the folders are the program's own.
        """
        drafts = self._writable_drafts()
        text = af.render(
            tree_of(answers, self._tree, self._known, "", drafts, tuple(self.taken)), notes
        )
        for folder in folders:
            try:
                folder.mkdir(parents=True, exist_ok=True, mode=0o700)
                folder.chmod(0o700)
                place = af.save_beside(folder / self.path.name, text.encode(), "rescued")
                place.chmod(0o600)
                return place
            except (af.NotSaved, OSError):
                continue
        return None

    def _text_for(self, tree: Tree) -> str:
        frame: Tree = {"written_by": self._written_by or written_by(), **tree}
        if not self._text:
            return af.render(frame, notes)
        try:
            return af.splice(self._text, tree, notes, order)
        except af.CannotSplice:
            return af.render({**frame, **tree}, notes)
