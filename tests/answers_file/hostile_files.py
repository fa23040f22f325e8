"""Files that mean harm, as large as is wished: answers, rainfall and plants.

Each kind takes about how many bytes it is to have; `.ci/files hostile` opens all of them at the
size that is still read, each by a program of its own, beside a sound file.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

SAMPLES = Path(__file__).parents[2] / "sample_answers"
SOUND = (SAMPLES / "finished_us.yaml").read_bytes()
NAMED = b"garden_name: Maple corner"
NAMING = SOUND.replace(b"own_plants: none", b"own_plants: own_plants.csv")
assert NAMING != SOUND
ANSWERS, RAIN, PLANTS = 230_000, 49_000_000, 1_900_000
"""Just under what is read of each; what is over it is refused by its size."""

Make = Callable[[int], bytes]


def _as_name(value: bytes) -> bytes:
    return SOUND.replace(NAMED, b"garden_name: " + value)


def _on_top(lines: bytes) -> bytes:
    return SOUND.replace(b"start:\n", lines + b"start:\n", 1)


def _bomb(size: int) -> bytes:
    rows = [b"a0: &a0 [x, x]"]
    rows += [b"a%d: &a%d [%s]" % (n, n, b", ".join([b"*a%d" % (n - 1)] * 9)) for n in range(1, 30)]
    return _on_top(b"\n".join(rows) + b"\n")


HOSTILE_ANSWERS: dict[str, Make] = {
    "sound": lambda _: SOUND,
    "bomb of aliases": _bomb,
    "many anchors": lambda n: _on_top(b"".join(b"k%d: &a%d x\n" % (i, i) for i in range(n // 16))),
    "an alias to itself": lambda _: _as_name(b"&a [*a]"),
    "flow lists in each other": lambda n: _as_name(b"[" * n),
    "flow maps in each other": lambda n: _as_name(b"{a: " * (n // 4)),
    "block lists in each other": lambda n: _on_top(b"x: " + b"- " * (n // 2) + b"a\n"),
    "block maps in each other": lambda n: _on_top(
        b"".join(b" " * i + b"a:\n" for i in range(int((2 * n) ** 0.5)))
    ),
    "closed lists": lambda n: _as_name(b"[" * (n // 2) + b"]" * (n // 2)),
    "one plain scalar": lambda n: _as_name(b"v" * n),
    "one quoted scalar": lambda n: _as_name(b'"' + b"\\x41" * (n // 4) + b'"'),
    "a quote that never ends": lambda n: SOUND + b"'" + b"x\n" * (n // 2),
    "one block scalar": lambda n: _as_name(b"|\n" + b"    v\n" * (n // 6)),
    "blank lines in a scalar": lambda n: _as_name(b'"a' + b"\n" * n + b'b"'),
    "digits": lambda n: SOUND.replace(b"rain_depth: 1 in", b"rain_depth: " + b"9" * 9_000 + b" in"),
    "keys": lambda n: _on_top(b"".join(b"k%d: v\n" % i for i in range(n // 10))),
    "the same key": lambda n: _on_top(b"k: v\n" * (n // 5)),
    "one long key": lambda n: _on_top(b"k" * n + b": v\n"),
    "question marks": lambda n: _on_top(b"? " * (n // 2) + b"\n"),
    "colons": lambda n: _as_name(b": " * (n // 2)),
    "merge keys": lambda n: _on_top(b"b: &b {x: y}\n" + b"m: {<<: *b}\n" * (n // 12)),
    "tags": lambda n: _as_name(b"!!python/object/apply:os.system ['id']"),
    "own tags": lambda n: _on_top(b"%TAG ! tag:x,2000:\n---\n" + b"k: !t v\n" * (n // 8)),
    "one long tag": lambda n: _as_name(b"!" + b"t" * n + b" v"),
    "documents": lambda n: SOUND + b"---\na\n" * (n // 6),
    "comments": lambda n: b"# c\n" * (n // 4) + SOUND,
    "one long comment": lambda n: b"# " + b"c" * n + b"\n" + SOUND,
    "tabs": lambda n: _on_top(b"\t" * n + b"\n"),
    "marks on one letter": lambda n: _as_name(b"e" + "\u0301".encode() * (n // 2)),
    "signs that turn the writing": lambda n: _as_name("\u202e".encode() * (n // 3)),
    "line ends of other kinds": lambda n: _as_name("a\x85b\u2028c\u2029".encode() * (n // 11)),
    "noncharacters": lambda _: _as_name("\ufdd0\U0001ffff".encode()),
    "half characters": lambda _: _as_name(b"\xed\xa0\x80"),
    "no text": lambda n: bytes(range(256)) * (n // 256),
    "NUL": lambda n: _as_name(b"\x00" * n),
    "nothing but NUL": lambda n: b"\x00" * n,
    "a byte order mark": lambda _: b"\xef\xbb\xbf" + SOUND,
    "many byte order marks": lambda n: b"\xef\xbb\xbf" * (n // 3) + SOUND,
    "UTF-16": lambda _: SOUND.decode().encode("utf-16"),
    "UTF-16 without its mark": lambda _: SOUND.decode().encode("utf-16-be"),
    "UTF-32": lambda _: SOUND.decode().encode("utf-32"),
    "lines that end as on old machines": lambda _: SOUND.replace(b"\n", b"\r"),
    "readings": lambda n: SOUND.replace(
        b"readings:\n", b"readings:\n" + b"        - +1 min left 8 in\n" * (n // 30)
    ),
    "too large": lambda n: SOUND + b"# " + b"x" * (n * 100),
}
_RAIN = b"date,rain_in\n"
HOSTILE_RAIN: dict[str, Make] = {
    "one line": lambda n: b"x" * n,
    "commas": lambda n: _RAIN + b"," * n,
    "a quote that never ends": lambda n: _RAIN + b'"' + b"2023-01-01,0\n" * (n // 13),
    "quotes": lambda n: _RAIN + b'"' * n,
    "the same day": lambda n: _RAIN + b"2023-01-01,0.1\n" * (n // 15),
    "bad days": lambda n: _RAIN + b"2023-02-30,0.1\n" * (n // 15),
    "digits": lambda n: _RAIN + b"2023-01-01," + b"9" * (n // 4) + b"\n",
    "numbers too large": lambda n: _RAIN + b"2023-01-01,1e999\n2023-01-02,-1e308\n",
    "blank lines": lambda n: _RAIN + b"\n" * n,
    "NUL": lambda n: _RAIN + b"\x00" * n,
    "no text": lambda n: _RAIN + bytes(range(256)) * (n // 256),
    "UTF-16": lambda n: (_RAIN + b"2023-01-01,0\n" * (n // 26)).decode().encode("utf-16"),
    "signs that turn the writing": lambda n: _RAIN + "\u202e".encode() * (n // 3),
    "formulas": lambda n: _RAIN + b"=cmd|' /C calc'!A0,@SUM(1)\n" * (n // 27),
    "headings": lambda n: b"date,rain_in," + b"h," * (n // 2) + b"\n2023-01-01,0\n",
}
_PLANTS = (SAMPLES / "own_plants.csv").read_bytes()
_ROW = _PLANTS.rstrip(b"\n").split(b"\n")[-1]
HOSTILE_PLANTS: dict[str, Make] = {
    "rows": lambda n: _PLANTS + (_ROW + b"\n") * (n // (len(_ROW) + 1)),
    "one cell": lambda n: _PLANTS + b"x" * n,
    "commas": lambda n: _PLANTS + b"," * n,
    "values of a cell": lambda n: _PLANTS + _ROW.replace(b"full", b"full;" * (n // 5), 1),
    "a quote that never ends": lambda n: _PLANTS + b'"' + (_ROW + b"\n") * (n // len(_ROW)),
    "NUL": lambda n: _PLANTS + b"\x00" * n,
    "no text": lambda n: bytes(range(256)) * (n // 256),
    "UTF-16": lambda n: _PLANTS.decode().encode("utf-16"),
    "signs that turn the writing": lambda n: _PLANTS + "\u202e".encode() * (n // 3),
    "headings": lambda n: b"scientific_name," * (n // 16) + b"\n" + _PLANTS,
    "markup": lambda n: _PLANTS + b"<script>alert(1)</script>," * (n // 26),
}
KINDS = {
    "garden.yaml": (HOSTILE_ANSWERS, ANSWERS),
    "invented_rain.csv": (HOSTILE_RAIN, RAIN),
    "own_plants.csv": (HOSTILE_PLANTS, PLANTS),
}
"""The files of a garden, each with its harm and its size."""
REPORTED = (0, 1, 2)
"""How a check may end."""


def put(folder: Path, file: str, data: bytes) -> Path:
    """Put a garden into a folder, one of its files made to harm; returns its answers file."""
    for name in KINDS:
        sound = NAMING if name == "garden.yaml" else (SAMPLES / name).read_bytes()
        (folder / name).write_bytes(data if name == file else sound)
    return folder / "garden.yaml"


def main(seconds: float, megabytes: float) -> int:
    """Check each with a program of its own; print what it took beside a sound file."""
    faults, plain = 0, 0.0
    for file, (kinds, size) in KINDS.items():
        for name, make in kinds.items():
            with tempfile.TemporaryDirectory() as folder:
                path = put(Path(folder), file, make(size))
                words = [sys.executable, "-m", "interview", "--check", str(path)]
                where = {"cwd": SAMPLES.parent, "env": {**os.environ, "HOME": folder}}
                said = Path(folder, "said")
                with said.open("wb") as out:
                    run = subprocess.Popen(words, stdout=out, stderr=out, **where)  # type: ignore[call-overload]
                    _, status, used = os.wait4(run.pid, 0)
                    run.returncode = os.waitstatus_to_exitcode(status)
                text = said.read_text("utf-8", "replace")
            took, held = used.ru_utime + used.ru_stime, used.ru_maxrss / 1024
            plain = plain or took
            wrong = run.returncode not in REPORTED or "Traceback" in text
            wrong |= "error in the program" in text or took > seconds or held > megabytes
            faults += wrong
            print(
                f"{file:<18} {name:<34} {took:5.2f} s {took / plain:5.1f} x {held:4.0f} MB, "
                f"status {run.returncode}{'  FAULT' if wrong else ''}",
                flush=True,
            )
    return int(bool(faults))
