"""The answers file: YAML text to a tree of answers and back, safely on disk."""

from interview.answers_file.loading import Fingerprint, NotLoaded, Parsed, load, parse, read
from interview.answers_file.locking import AlreadyOpen, Lock
from interview.answers_file.names import backup_of, belongs_to, free_name, lock_of, real
from interview.answers_file.oslayer import OsLayer, reason
from interview.answers_file.rendering import double_quoted, render, unwritable
from interview.answers_file.saving import (
    Changed,
    NotSaved,
    Removed,
    Saved,
    backup,
    put,
    remove_stray_temps,
    save,
    save_beside,
)
from interview.answers_file.splicing import CannotSplice, splice
from interview.answers_file.tree import (
    END,
    FORMAT,
    FRAME_KEYS,
    VERSION,
    Node,
    Notes,
    Order,
    Path,
    Tree,
    Trouble,
    Unreadable,
    Unwritable,
    same,
)
from interview.reading.foreign import shown

__all__ = [
    "END",
    "FORMAT",
    "FRAME_KEYS",
    "VERSION",
    "AlreadyOpen",
    "CannotSplice",
    "Changed",
    "Fingerprint",
    "Lock",
    "Node",
    "NotLoaded",
    "NotSaved",
    "Notes",
    "Order",
    "OsLayer",
    "Parsed",
    "Path",
    "Removed",
    "Saved",
    "Tree",
    "Trouble",
    "Unreadable",
    "Unwritable",
    "backup",
    "backup_of",
    "belongs_to",
    "double_quoted",
    "free_name",
    "load",
    "lock_of",
    "parse",
    "put",
    "read",
    "real",
    "reason",
    "remove_stray_temps",
    "render",
    "same",
    "save",
    "save_beside",
    "shown",
    "splice",
    "unwritable",
]
