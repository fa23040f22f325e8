"""The answers file: YAML text to a tree of answers and back, safely on disk.

Decided here:

- A file that something else removed is written again; one that was changed is left, and the
  answers go on beside it.
- Only what is ours is touched. A ``.bak`` is replaced only where its bytes are those of a copy
  this program is known to have made (``copies`` in the state folder), a lock file only where it
  holds nothing but our note and has one name. Else ``.2.bak`` or ``.2.lock`` is taken, and that
  is told. No link is followed but the one that was opened as the answers file.
- A file that an answer names is looked at before it is opened, read line by line up to fixed
  bounds, and what came of it, a refusal too, is kept while device, number, size and times of the
  file stay the same: so it is read once for each change.
- The answers file is edited in place by the positions of its YAML nodes, read back, and compared
  before it is committed; what cannot be edited in place is rewritten after a backup.
"""

from interview.answers_file.disk import (
    OsLayer,
    backup_of,
    belongs_to,
    free_name,
    lock_of,
    real,
    reason,
)
from interview.answers_file.loading import Fingerprint, NotLoaded, Parsed, load, parse, read
from interview.answers_file.locking import AlreadyOpen, Lock
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
    "END", "FORMAT", "FRAME_KEYS", "VERSION", "AlreadyOpen", "CannotSplice", "Changed",
    "Fingerprint", "Lock", "Node", "NotLoaded", "NotSaved", "Notes", "Order", "OsLayer", "Parsed",
    "Path", "Removed", "Saved", "Tree", "Trouble", "Unreadable", "Unwritable", "backup",
    "backup_of", "belongs_to", "double_quoted", "free_name", "load", "lock_of", "parse", "put",
    "read", "real", "reason", "remove_stray_temps", "render", "same", "save", "save_beside",
    "shown", "splice", "unwritable",
]  # fmt: skip
