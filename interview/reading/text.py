"""Cleaning of typed text, and the sentence that says why a text cannot be taken."""

from __future__ import annotations

import re
from functools import lru_cache

from interview.reading import foreign

MOST_CHARACTERS = 64
"""A longer text in a one-value field is a paste gone wrong, and is refused unread."""

_MOST_SAID = 180
_MOST_SHOWN = 24

_VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5",
    "⅗": "3/5", "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8",
    "⅝": "5/8", "⅞": "7/8", "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_ALIKE = {
    "'": "′’‘‛´ʹʼˊ",
    '"': "″“”„‟ʺ",
    "-": "−–—‐‑‒―⁻﹣",
    "/": "⁄∕",
    ":": "∶",
    "x": "×",
    "°": "º˚",
    "m2": "㎡",
    "m3": "㎥",
    "mm": "㎜",
    "cm": "㎝",
    "": "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff\u00ad",
}
_PLAIN = {char: simple for simple, chars in _ALIKE.items() for char in chars} | {
    char: f" {fraction} " for char, fraction in _VULGAR.items()
}
_NOT_ASCII = r"[^\x00-\x7f]"
_LINE_BREAKS = "\x85\u2028\u2029"

# A copy through Unicode compatibility form turns 9½ into 91⁄2 with no gap; the fraction slash
# gives it away, because nobody types that character by hand.
_CLOSED_UP = r"(?<![0-9.,/⁄])([0-9]+)([0-9])⁄([0-9]+)(?![0-9])"

_UNKNOWN = {
    "dont know yet", "dont know", "do not know", "i dont know", "not sure", "not sure yet",
    "unknown", "skip", "idk", "dunno", "?",
}  # fmt: skip

_USUAL = {"usual", "the usual", "as usual", "normal"}


class Refused(ValueError):
    """A typed text that was not taken; ``said`` tells the person why and what to write."""

    def __init__(self, said: str) -> None:
        self.said = said if len(said) <= _MOST_SAID else said[: _MOST_SAID - 1] + "…"
        super().__init__(self.said)


class Suggested(Refused):
    """A text that was not taken but is near one that would be: ``meant`` is the text to take."""

    def __init__(self, said: str, meant: str) -> None:
        super().__init__(said)
        self.meant = meant


def shown(text: str) -> str:
    """Return ``text`` in quotes for a sentence: cut short, with what cannot be seen as numbers."""
    short = text if len(text) <= _MOST_SHOWN else text[: _MOST_SHOWN - 1] + "…"
    safe = foreign.shown(short)
    return f'"{safe}"' if len(safe) <= 2 * _MOST_SHOWN else f'"{safe[: 2 * _MOST_SHOWN - 1]}…"'


def two_ways(text: str, one: str, other: str) -> Refused:
    """Return the refusal of a text with two honest readings, showing how to write each."""
    return Refused(f"{shown(text)} could mean two things. Write {one} or {other}.")


def plain(text: str) -> str:
    """Return ``text`` with typographic characters as the keyboard has them, and ends trimmed.

    Curly quotes, primes, dashes, vulgar fractions, wide letters, digits of any script and unusual
    spaces become ASCII; zero-width characters vanish. Compatibility normalisation is not used:
    it would turn 12½ into 121⁄2. Raises nothing.
    """
    text = re.sub(_CLOSED_UP, _opened_up, text)
    text = re.sub(_NOT_ASCII, _plain_character, text).replace("`", "'").replace("''", '"')
    # Two spaces, because one space between digits may group thousands and a tab never does.
    return text.strip().replace("\t", "  ")


def _opened_up(match: re.Match[str]) -> str:
    whole, over, under = match.groups()
    return f"{whole} {over}/{under}" if f"{over}/{under}" in _VULGAR.values() else match[0]


def _plain_character(match: re.Match[str]) -> str:
    char = match[0]
    if char in _PLAIN:
        return _PLAIN[char]
    if char.isdecimal():
        from unicodedata import decimal  # slow to load, and wanted by few texts

        return str(decimal(char))
    if "\uff01" <= char <= "\uff5e":
        return chr(ord(char) - 0xFEE0)
    return " " if char.isspace() and char not in _LINE_BREAKS else char


def taken(text: str, example: str, most: int = MOST_CHARACTERS) -> str:
    """Return the plain form of ``text``, ready to read.

    Raises ``Refused`` when it is empty, longer than ``most`` characters, on several lines, or
    holds a character that cannot be shown.
    """
    if len(text) > 16 * most or len(text.strip()) > most:
        raise Refused(f"That is too long to read as one answer. Write it short, such as {example}.")
    clean = plain(text)
    if not clean:
        raise Refused(f"Nothing is written here yet. Write an answer, such as {example}.")
    for char in clean:
        if char in "\n\r\v\f" + _LINE_BREAKS:
            raise Refused(f"Write the answer on one line, such as {example}.")
        if not char.isprintable():
            raise Refused(f"Take out the hidden character {shown(char)} and write it again.")
    return clean


def hidden_character(text: str) -> str | None:
    """Return the first character of ``text`` that takes no room or turns the writing direction."""
    if text.isascii():
        return None
    from unicodedata import category

    return next((char for char in text.strip() if category(char) == "Cf"), None)


def is_unknown(text: str) -> bool:
    """Tell whether ``text`` says that the answer is not known yet."""
    return len(text) <= MOST_CHARACTERS and _says_unknown(text)


@lru_cache(maxsize=1024)  # of every answer it is asked again and again
def _says_unknown(text: str) -> bool:
    said = plain(text).casefold().replace("'", "").replace("_", " ").strip(" .!")
    return " ".join(said.split()) in _UNKNOWN or (said != "" and not said.strip("?"))


def is_usual(text: str) -> bool:
    """Tell whether ``text`` asks for what is usual."""
    if len(text) > MOST_CHARACTERS:
        return False
    return " ".join(plain(text).casefold().strip(" .!").split()) in _USUAL


_ODD = (
    (r"^\s*-", "{text} is below zero. Write zero or more, such as {example}."),
    (
        r"\de[-+]?\d|(?<!\d)0x[\da-f]|0[ob][01]|_|\*\*|\^|∞|\bnan\b|\binf(inity)?\b",
        "Write the number in plain digits, such as {example}.",
    ),
    (
        r"^(over|above|under|below|up to|at least|at most|(more|less|fewer) than)\b"
        r"|^[~<>≈≤≥±+]|[+?~]$|\dish\b|\b(about|approx|approximately|around|roughly|maybe"
        r"|nearly|almost|circa|or so)\b",
        "Write one number, your best one, such as {example}, or answer don't know yet.",
    ),
    (
        r"(?<![a-z])(to|or|between)(?![a-z])|\d\s*\.\.+\s*\d",
        "Write one number and not a range, such as {example}.",
    ),
    (
        r"(?<![a-z])(x|by)(?![a-z])|\*|@|=",
        "Only one measure fits here. Write one, such as {example}.",
    ),
    (r"[$€£]", "Leave out the money sign. Write a number, such as {example}."),
)


_SPELLED = {
    "zero": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6",
    "seven": "7", "eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12",
}  # fmt: skip
_LEADING_WORD = (
    r"(?i)(?:(?P<half>half|a half|one half|a quarter|one quarter)(?: of)?(?: an?)?"
    r"|(?P<word>[a-z]+))"
    r"(?: and (?:a |one )?(?P<and>half|quarter))?(?=\s+[a-z]|$)"
)
_AND_PART = r"(?i)^(\d+) and (?:a |one )?(half|quarter)\b"
_ONE_OF = r"(?i)an?\s+(in|inch|f(oo|ee)?t|y(ar)?d|met(er|re)|hour|minute|day|pace)\b"
_PARTS = {"half": "1/2", "quarter": "1/4"}


def in_digits(clean: str) -> str:
    """Return a plain text with the number word it begins with in digits: ``half an inch``.

    Numbers to twelve, ``a``, ``half`` and ``quarter`` are known; anything else stays as it is.
    """
    if match := re.match(_AND_PART, clean):
        return f"{match[1]} {_PARTS[match[2].casefold()]}{clean[match.end() :]}"
    match = re.match(_LEADING_WORD, clean)
    if match is None:
        return clean
    word, also = (match["word"] or "").casefold(), (match["and"] or "").casefold()
    if match["half"]:
        digits = _PARTS[match["half"].casefold().split()[-1]]
    elif word in _SPELLED:
        digits = _SPELLED[word]
    elif re.match(_ONE_OF, clean):
        digits = "1"
    else:
        return clean
    if also and "/" in digits:
        return clean
    tail = f" {_PARTS[also]}" if also else ""
    return f"{digits}{tail}{clean[match.end() :]}"


def refuse_odd(clean: str, example: str, *, product: bool = False) -> None:
    """Raise ``Refused`` for signs, guesses, ranges, products and programmers' numerals.

    ``product`` lets ``12 x 10`` through, for an area.
    """
    for pattern, said in _ODD:
        if product and said.startswith("Only one"):
            continue
        if re.search(pattern, clean, re.IGNORECASE):
            raise Refused(said.format(text=shown(clean), example=example))
