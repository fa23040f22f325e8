"""Yes or no, one of a list, and several of a list."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from interview.reading.text import Refused, Suggested, hidden_character, plain, shown, taken

Options = Sequence[tuple[str, str]]
"""Each option's id, and the label people see."""

MOST_CHARACTERS = 200
"""Labels are longer than measures."""

_LIKE_A_WORD = 0.75
"""How near a word must be to one of a label, by the ratio of ``difflib``. Our choice."""
_LONG_WORD = 4
"""Shorter words of a label, such as ``the``, name no option."""
_YES = {"yes", "y", "true", "on"}
_NO = {"no", "n", "false", "off"}
_DENIES = {"no", "not", "never", "without"}
"""Beside one of these a word of a label may mean its contrary."""
_MEANS_YES = {"yes", "yess", "yeah", "yea", "yep", "yup", "ye", "yse", "sure"}
_MEANS_NO = {"no", "noo", "nope", "nah", "nop", "not yet"}
"""Words near yes and no: which of the two is meant is asked and never taken."""
_NONE = {"none", "none of these", "none of them"}
_MOST_LABEL = 40


def read_yes_no(text: str) -> bool:
    """Return whether ``text`` says yes or no; raises ``Refused``."""
    clean = taken(text, "yes").casefold()
    if clean in _YES | _NO:
        return clean in _YES
    for word, meant in (("yes", _MEANS_YES), ("no", _MEANS_NO)):
        if clean.strip(" .!") in meant:
            raise Suggested(f"{shown(clean)} is not yes or no. Did you mean {word}?", word)
    raise Refused(f"{shown(clean)} is not yes or no. Write yes or no.")


def read_choice(text: str, options: Options) -> str:
    """Return the id of the option named by ``text``.

    An option is named by its id, its label, its place from 1, or a beginning that only it has;
    letter case does not count. Raises ``Refused``, or ``Suggested`` where a label is near.
    """
    clean = taken(text, _short(options[0][1]) if options else "1", MOST_CHARACTERS)
    if hidden := hidden_character(text):
        raise Refused(f"Take out the hidden character {shown(hidden)} and write it again.")
    wanted = _folded(clean)
    if not wanted:
        raise _unlisted(clean, options)
    for key, label in options:
        if wanted in (_folded(key), _folded(label)):
            return key
    if re.fullmatch(r"-?[0-9]+", clean):
        place = int(clean) if len(clean) < 5 else 0
        if 1 <= place <= len(options):
            return options[place - 1][0]
        raise Refused(
            f"There is no choice {shown(clean)}. Write a number from 1 to {len(options)}."
        )
    begun = [
        (key, label)
        for key, label in options
        if _folded(key).startswith(wanted) or _folded(label).startswith(wanted)
    ]
    if len(begun) == 1:
        return begun[0][0]
    if begun:
        one, other = (_short(label) for _, label in begun[:2])
        raise Refused(f"{shown(clean)} could mean two things. Write {one}, or {other}.")
    raise _unlisted(clean, options)


def _folded(text: str) -> str:
    return " ".join(re.sub(r"[_\-\s]+", " ", plain(text)).casefold().split())


def _short(label: str) -> str:
    return label if len(label) <= _MOST_LABEL else label[: _MOST_LABEL - 1] + "…"


def _unlisted(clean: str, options: Options) -> Refused:
    from difflib import get_close_matches

    found = {_folded(label): (key, label) for key, label in options}
    found |= {_folded(key): (key, label) for key, label in options}
    near = get_close_matches(_folded(clean), list(found), n=1)
    if near or (near := _by_a_word(_folded(clean), found)):
        key, label = found[near[0]]
        return Suggested(f"{shown(clean)} is not on the list. Did you mean {_short(label)}?", key)
    return Refused(
        f"{shown(clean)} is not on the list. Write one of its names, or a number from 1 to "
        f"{len(options)}."
    )


def _by_a_word(clean: str, found: Mapping[str, tuple[str, str]]) -> list[str]:
    """Return the one name that holds a word like one of ``clean``; nothing where several do."""
    from difflib import get_close_matches

    words: dict[str, set[str]] = {}
    for name in found:
        for word in re.findall(r"[^\W\d_]+", name):
            if len(word) >= _LONG_WORD:
                words.setdefault(word, set()).add(name)
    said = re.findall(r"[^\W\d_]+", clean)
    typed = [word for word in said if len(word) >= _LONG_WORD and not _DENIES.intersection(said)]
    names = {
        name
        for word in typed
        for like in get_close_matches(word, list(words), n=1, cutoff=_LIKE_A_WORD)
        for name in words[like]
    }
    return sorted(names) if len({found[name][0] for name in names}) == 1 else []


def read_ticks(text: str, options: Options) -> tuple[str, ...]:
    """Return the ids of the options named in ``text``, in the order of ``options``.

    Names are parted by commas, semicolons or ``and``, but for a comma within a label; numbers also
    by spaces. ``none`` is an empty choice, unless an option has that name. Raises ``Refused``.
    """
    clean = taken(text, "1, 3", MOST_CHARACTERS)
    exact = [key for key, label in options if _folded(clean) in (_folded(key), _folded(label))]
    if exact:
        return (exact[0],)
    if _folded(clean) in _NONE:
        return ()
    parts = re.split(r"\s+" if re.fullmatch(r"[\d ]+", clean) else "[,;]", text.strip())
    whole = _labels_whole(parts, options)
    names = [name for part in whole for name in _names(part, options)]
    if any(_folded(name) in _NONE for name in names):
        raise Refused("Write none alone, or write only the ones that are there, such as 1, 3.")
    if not names:
        raise _unlisted(clean, options)
    picked = set()
    for place, name in enumerate(names):
        try:
            picked.add(read_choice(name, options))
        except Suggested as near:
            mended = ", ".join([*names[:place], near.meant, *names[place + 1 :]])
            raise Suggested(near.said, mended) from None
    return tuple(key for key, _ in options if key in picked)


def _labels_whole(parts: list[str], options: Options) -> list[str]:
    """Return the parts with those joined again that a comma within a label has parted."""
    labels = {_folded(label) for _, label in options if "," in label}
    longest = max((label.count(",") + 1 for label in labels), default=1)
    names: list[str] = []
    begin = 0
    while begin < len(parts):
        ends = range(begin + longest, begin + 1, -1)
        whole = (end for end in ends if _folded(",".join(parts[begin:end])) in labels)
        end = next(whole, begin + 1)
        names.append(",".join(parts[begin:end]))
        begin = end
    return names


def _names(part: str, options: Options) -> list[str]:
    """Return the names in one part of a list: ``and`` parts them unless a label holds it."""
    if not part.strip():
        return []
    try:
        return [read_choice(part, options)]
    except Refused:
        return [name for name in re.split(r"\band\b", part, flags=re.IGNORECASE) if name.strip()]
