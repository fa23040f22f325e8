"""Saving answers: whatever fails, and when, the file is the whole old or the whole new one."""

from __future__ import annotations

import errno
import os
import resource
import shutil
import signal
import stat
import subprocess
import sys
import tempfile
import textwrap
import threading
from pathlib import Path

import pytest

from interview.answers_file import (
    Changed,
    Fingerprint,
    NotLoaded,
    NotSaved,
    OsLayer,
    Unreadable,
    backup,
    backup_of,
    belongs_to,
    free_name,
    load,
    lock_of,
    put,
    remove_stray_temps,
    render,
    save,
    save_beside,
)

ROOT = Path(__file__).parents[2]
NOBODY = 65534
as_root = pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() != 0,
    reason="needs root: permissions are tried as another user",
)


def text(name: str) -> str:
    return render({"start": {"garden_name": name, "note": "x" * 500}}, lambda path: "")


OLD, NEW = text("old"), text("new")


@pytest.fixture
def garden(tmp_path: Path) -> Path:
    path = tmp_path / "garden.yaml"
    save(path, OLD, expect=None)
    return path


def mark(content: str) -> Fingerprint:
    return Fingerprint.of(content.encode())


def others(path: Path) -> list[str]:
    return sorted(p.name for p in path.parent.iterdir() if p != path)


CALLS = ["open", "read", "write", "fsync", "close", "replace", "link", "unlink", "stat", "fstat",
         "fchmod"]  # fmt: skip
ERRORS = ["ENOSPC", "EIO", "EDQUOT", "EACCES", "EPERM", "EROFS", "EMFILE", "EFBIG", "EINTR"]


class Faulty(OsLayer):
    """Fails the n-th call of one kind, once or from then on."""

    def __init__(self, call: str, when: int, code: int, lasting: bool) -> None:
        self.call, self.when, self.code, self.lasting = call, when, code, lasting
        self.counts = dict.fromkeys(CALLS, 0)

    @property
    def hit(self) -> bool:
        return self.counts[self.call] >= self.when


def _failing(name: str):
    real = getattr(OsLayer, name)

    def call(self, *args):
        self.counts[name] += 1
        count = self.counts[name]
        if name == self.call and (count == self.when or (self.lasting and count > self.when)):
            if name == "close":
                real(self, *args)
            raise OSError(self.code, os.strerror(self.code))
        return real(self, *args)

    return call


for one in CALLS:
    setattr(Faulty, one, _failing(one))


@pytest.mark.parametrize("new_file", [False, True])
@pytest.mark.parametrize("lasting", [False, True])
@pytest.mark.parametrize("call", CALLS)
def test_any_failing_call_leaves_the_old_file_or_the_new_one(call, lasting, new_file, tmp_path):
    runs = 0
    for name in ERRORS:
        for when in range(1, 50):
            path = tmp_path / f"{name}-{when}" / "garden.yaml"
            path.parent.mkdir()
            if not new_file:
                save(path, OLD, expect=None)
            layer = Faulty(call, when, getattr(errno, name), lasting)
            told = durable = None
            try:
                saved = save(path, NEW, expect=None if new_file else mark(OLD), os_layer=layer)
                durable = saved.durable
            except NotSaved as error:
                told = error.sentence
            found = path.read_text() if path.exists() else None
            if told:
                assert found == (None if new_file else OLD)
                assert told.endswith(".") and "\n" not in told and "Errno" not in told
            else:
                assert found == NEW and durable is not None
            if call != "unlink":
                assert others(path) == []
            if not layer.hit:
                break
            runs += 1
    unused = {"read", "replace", "fchmod"} if new_file else {"link", "unlink"}
    assert runs >= (0 if call in unused else len(ERRORS))


def test_a_fault_after_the_file_has_its_name_is_saved_but_not_confirmed(garden):
    for call, when in [("fsync", 2), ("open", 3), ("close", 3)]:
        layer = Faulty(call, when, errno.EIO, False)
        saved = save(garden, NEW, expect=mark(garden.read_text()), os_layer=layer)
        assert not saved.durable and garden.read_text() == NEW and layer.hit
        save(garden, OLD, expect=mark(NEW))


def test_short_writes_and_one_interruption_are_no_trouble(garden):
    class Slow(OsLayer):
        interrupted = False

        def write(self, fd, data):
            if not self.interrupted:
                self.interrupted = True
                raise InterruptedError(errno.EINTR, "interrupted")
            return super().write(fd, data[:1])

    assert save(garden, NEW, expect=mark(OLD), os_layer=Slow()).durable
    assert garden.read_text() == NEW


def test_a_write_that_takes_nothing_is_a_fault_and_not_a_wait(garden):
    class Stuck(OsLayer):
        def write(self, fd, data):
            return 0

    with pytest.raises(NotSaved):
        save(garden, NEW, expect=mark(OLD), os_layer=Stuck())
    assert garden.read_text() == OLD and others(garden) == []


def test_every_save_syncs_the_file_before_its_name_and_the_folder_after(garden):
    seen = []

    class Watching(OsLayer):
        def fsync(self, fd):
            seen.append("folder" if stat.S_ISDIR(os.fstat(fd).st_mode) else "file")
            super().fsync(fd)

        def replace(self, old, new):
            seen.append("replace")
            super().replace(old, new)

        def link(self, old, new):
            seen.append("link")
            super().link(old, new)

    save(garden, NEW, expect=mark(OLD), os_layer=Watching())
    assert seen == ["file", "replace", "folder"]
    seen.clear()
    save(garden.with_name("b.yaml"), NEW, expect=None, os_layer=Watching())
    assert seen == ["file", "link", "folder"]


def test_after_a_failed_sync_a_fresh_file_is_written(garden):
    synced = []

    class Failing(OsLayer):
        def fsync(self, fd):
            synced.append(os.fstat(fd).st_ino)
            if len(synced) == 1:
                raise OSError(errno.EIO, "fault")

    layer = Failing()
    with pytest.raises(NotSaved):
        save(garden, NEW, expect=mark(OLD), os_layer=layer)
    assert len(synced) == 1
    assert save(garden, NEW, expect=mark(OLD), os_layer=layer).durable


def test_nothing_changed_means_nothing_written(garden):
    before = garden.stat()

    class Reading(OsLayer):
        def write(self, fd, data):
            raise AssertionError("written")

    assert save(garden, OLD, expect=mark(OLD), os_layer=Reading()).durable
    assert (garden.stat().st_ino, garden.stat().st_mtime_ns) == (before.st_ino, before.st_mtime_ns)


def test_what_could_not_be_opened_again_is_not_written(garden):
    for bad in ("a: [", OLD.replace("end_of_answers: true\n", ""), OLD.replace('"1.0"', '"2.0"'),
                "\ud800", "x" * 300_000, ""):  # fmt: skip
        with pytest.raises(NotSaved):
            save(garden, bad, expect=mark(OLD))
    assert garden.read_text() == OLD


def test_outside_changes_are_never_written_over(garden):
    stamp = garden.stat().st_mtime_ns
    edit = OLD.replace("old", "odd")
    garden.write_text(edit)
    os.utime(garden, ns=(stamp, stamp))
    with pytest.raises(Changed, match="changed by another program"):
        save(garden, NEW, expect=mark(OLD))
    replacement = garden.with_name("other")
    replacement.write_text(OLD)
    replacement.replace(garden)
    save(garden, NEW, expect=mark(OLD))
    with pytest.raises(Changed, match="already a file"):
        save(garden, OLD, expect=None)
    garden.unlink()
    with pytest.raises(Changed, match="was removed"):
        save(garden, OLD, expect=mark(NEW))
    assert not garden.exists()
    garden.mkdir()
    with pytest.raises(NotSaved, match="not a plain file"):
        save(garden, OLD, expect=mark(NEW))
    garden.rmdir()
    os.mkfifo(garden)
    with pytest.raises(NotSaved, match="not a plain file"):
        save(garden, OLD, expect=mark(NEW))


def test_a_link_stays_a_link_and_a_device_behind_one_is_refused(garden, tmp_path):
    link = tmp_path / "link.yaml"
    link.symlink_to(garden.name)
    save(link, NEW, expect=mark(OLD))
    assert link.is_symlink() and garden.read_text() == NEW
    for target in ("/dev/full", "/dev/null"):
        device = tmp_path / f"dev{target[5:]}"
        device.symlink_to(target)
        with pytest.raises(NotSaved, match="not a plain file"):
            save(device, NEW, expect=mark(OLD))
    loop = tmp_path / "loop"
    loop.symlink_to("loop")
    with pytest.raises(NotSaved):
        save(loop, NEW, expect=None)


@pytest.mark.parametrize("mode", [0o640, 0o664, 0o600, 0o644])
def test_the_mode_is_kept(garden, mode):
    garden.chmod(mode)
    save(garden, NEW, expect=mark(OLD))
    assert stat.S_IMODE(garden.stat().st_mode) == mode


@pytest.mark.parametrize(("umask", "mode"), [(0, 0o644), (0o022, 0o644), (0o077, 0o600)])
def test_a_new_file_is_for_the_owner_to_write_and_at_most_for_others_to_read(tmp_path, umask, mode):
    before = os.umask(umask)
    try:
        save(tmp_path / "a.yaml", NEW, expect=None)
    finally:
        os.umask(before)
    assert stat.S_IMODE((tmp_path / "a.yaml").stat().st_mode) == mode


def test_a_second_name_of_the_file_is_told(garden, tmp_path):
    os.link(garden, tmp_path / "second.yaml")
    assert "hard link" in save(garden, NEW, expect=mark(OLD)).note
    assert save(garden, OLD, expect=mark(NEW)).note == ""


def test_a_name_of_255_bytes_saves_and_is_backed_up(tmp_path):
    path = tmp_path / ("é" * 125 + ".yaml")
    save(path, OLD, expect=None)
    save(path, NEW, expect=mark(OLD))
    assert backup(path, mark(NEW), []) == ""
    assert backup_of(path).read_text() == NEW and len(others(path)) == 1


def test_a_planted_link_with_the_temporary_name_is_not_followed(garden, monkeypatch):
    tokens = iter(["aaaaaaaa", "bbbbbbbb"])
    monkeypatch.setattr("interview.answers_file.saving.secrets.token_hex", lambda n: next(tokens))
    victim = garden.with_name("victim")
    victim.write_text("mine")
    garden.with_name(".garden.yaml.aaaaaaaa.part").symlink_to(victim)
    save(garden, NEW, expect=mark(OLD))
    assert victim.read_text() == "mine" and garden.read_text() == NEW


def test_a_vanished_folder_and_a_path_through_a_file_are_explained(tmp_path, garden):
    with pytest.raises(NotSaved, match="no such file or folder"):
        save(tmp_path / "gone" / "a.yaml", NEW, expect=None)
    with pytest.raises(NotSaved, match="not a folder"):
        save(garden / "a.yaml", NEW, expect=None)
    for path in ("", "a\0b"):
        with pytest.raises(NotSaved, match="not the name"):
            save(path, NEW, expect=None)
    with pytest.raises(NotSaved, match="too long"):
        save(tmp_path / ("x" * 300), NEW, expect=None)


def test_a_file_size_limit_leaves_the_old_file(garden):
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    ignored = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100, before[1]))
    try:
        with pytest.raises(NotSaved, match="does not take a file of this size"):
            save(garden, NEW, expect=mark(OLD))
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
        signal.signal(signal.SIGXFSZ, ignored)
    assert garden.read_text() == OLD and others(garden) == []


def as_nobody(do) -> str:
    """What a function says when another user runs it; forked, so that nothing is imported anew."""
    reader, writer = os.pipe()
    if not (child := os.fork()):
        try:
            os.setgroups([])
            os.setgid(NOBODY)
            os.setuid(NOBODY)
            said = do() or "done"
        except BaseException as error:
            said = f"{type(error).__name__}: {error}"
        os.write(writer, said.encode())
        os._exit(0)
    os.close(writer)
    os.waitpid(child, 0)
    with os.fdopen(reader) as pipe:
        return pipe.read()


@pytest.fixture
def open_garden(garden):
    """The garden in a folder that another user can get to."""
    folder = Path(tempfile.mkdtemp())
    folder.chmod(0o777)
    path = folder / "garden.yaml"
    path.write_text(OLD)
    yield path
    shutil.rmtree(folder)


@as_root
def test_another_users_permissions_are_respected(open_garden):
    def saving():
        save(open_garden, NEW, expect=mark(OLD))

    open_garden.chmod(0o444)
    assert "not to be changed" in as_nobody(saving)
    open_garden.chmod(0o666)
    open_garden.parent.chmod(0o755)
    said = as_nobody(saving)
    assert said.startswith("NotSaved") and "not allowed" in said
    open_garden.parent.chmod(0o1777)
    assert as_nobody(saving).startswith("NotSaved")
    assert open_garden.read_text() == OLD and others(open_garden) == []
    open_garden.chmod(0)
    assert "not allowed" in as_nobody(lambda: load(open_garden))
    open_garden.parent.chmod(0)
    assert "not allowed" in as_nobody(lambda: load(open_garden))
    open_garden.parent.chmod(0o777)


@as_root
def test_root_keeps_the_owner_of_the_file(open_garden):
    os.chown(open_garden, NOBODY, NOBODY)
    save(open_garden, NEW, expect=mark(OLD))
    assert open_garden.stat().st_uid == NOBODY and open_garden.read_text() == NEW


def test_killed_at_any_moment_the_file_is_whole(garden):
    code = """
        import sys
        from interview.answers_file import Fingerprint, save
        path, texts = sys.argv[1], sys.argv[2:]
        now = Fingerprint.of(open(path, "rb").read())
        print("ready", flush=True)
        while True:
            for text in texts:
                now = save(path, text, expect=now).fingerprint
    """
    for kill in range(30):
        child = subprocess.Popen(
            [sys.executable, "-c", textwrap.dedent(code), str(garden), NEW, OLD],
            env={"PYTHONPATH": str(ROOT)},
            stdout=subprocess.PIPE,
        )
        assert child.stdout and child.stdout.readline() == b"ready\n"
        try:
            child.wait(timeout=0.001 * (1 + kill * 37 % 30))
        except subprocess.TimeoutExpired:
            child.send_signal(signal.SIGKILL)
        assert child.wait() == -signal.SIGKILL
        child.stdout.close()
        assert garden.read_text() in (OLD, NEW)
        assert load(garden)[0].troubles == []
        for left in remove_stray_temps(garden):
            assert left.read_text() in (OLD, NEW)
            left.unlink()
        assert others(garden) == []


def test_killed_at_any_call_the_file_is_whole(garden):
    for step in range(1, 30):
        child = os.fork()
        if not child:
            try:
                layer, seen = OsLayer(), [0]

                def dying(real, seen=seen, step=step):
                    def call(*args):
                        seen[0] += 1
                        if seen[0] == step:
                            os.kill(os.getpid(), signal.SIGKILL)
                        return real(*args)

                    return call

                for name in CALLS:
                    setattr(layer, name, dying(getattr(layer, name)))
                save(garden, NEW, expect=mark(OLD), os_layer=layer)
            finally:
                os._exit(0)
        _, status = os.waitpid(child, 0)
        found = garden.read_text()
        assert found in (OLD, NEW)
        for left in remove_stray_temps(garden):
            left.unlink()
        assert others(garden) == []
        save(garden, OLD, expect=mark(found))
        if os.WIFEXITED(status):
            break
    assert step > 12


def test_of_two_that_make_the_same_file_exactly_one_wins(tmp_path):
    for number in range(60):
        path, won, start = tmp_path / f"{number}.yaml", [], threading.Barrier(2)

        def make(content, path=path, won=won, start=start):
            start.wait()
            try:
                save(path, content, expect=None)
                won.append(content)
            except Changed:
                pass

        threads = [threading.Thread(target=make, args=(one,)) for one in (OLD, NEW)]
        [thread.start() for thread in threads]
        [thread.join() for thread in threads]
        assert len(won) == 1 and path.read_text() == won[0]


def test_without_hard_links_a_new_file_is_still_made_only_once(tmp_path):
    class Stick(OsLayer):
        def link(self, old, new):
            raise OSError(errno.EPERM, "no links here")

    path = tmp_path / "a.yaml"
    save(path, NEW, expect=None, os_layer=Stick())
    assert path.read_text() == NEW and others(path) == []
    with pytest.raises(Changed):
        save(path, OLD, expect=None, os_layer=Stick())


def test_without_hard_links_a_name_that_was_taken_is_given_back_at_any_fault(tmp_path):
    """The name is taken with an empty file: a fault as that is closed leaves none behind."""

    class Stick(OsLayer):
        closed = 0

        def link(self, old, new):
            raise OSError(errno.EPERM, "no links here")

        def close(self, fd):
            super().close(fd)
            self.closed += 1
            if self.closed == 2:  # the first is the temporary file
                raise OSError(errno.ENOSPC, "full")

    path = tmp_path / "a.yaml"
    with pytest.raises(NotSaved):
        save(path, NEW, expect=None, os_layer=Stick())
    assert list(tmp_path.iterdir()) == []


def test_strays_are_cleared_unless_they_hold_more_than_the_file(garden):
    def stray(name: str, content: str, age: int) -> Path:
        path = garden.with_name(name)
        path.write_text(content)
        stamp = garden.stat().st_mtime_ns - age
        os.utime(path, ns=(stamp, stamp))
        return path

    older = stray(".garden.yaml.00000001.part", NEW, 10**9)
    newer = stray(".garden.yaml.00000002.part", NEW, -(10**9))
    torn = stray(".garden.yaml.00000003.part", NEW[:99], -(10**9))
    same = stray(".garden.yaml.00000004.part", OLD, -(10**9))
    foreign = [
        stray(".garden.yaml.xyz.part", NEW, 1),
        stray("garden.yaml.00000001.part", NEW, 1),
        stray(".garden.yam.00000001.part", NEW, 1),
    ]
    assert remove_stray_temps(garden) == [newer]
    assert newer.exists() and not (older.exists() or torn.exists() or same.exists())
    assert all(path.exists() for path in foreign)
    garden.unlink()
    assert remove_stray_temps(garden) == [newer]


def test_a_backup_holds_the_bytes_of_the_session_before(garden):
    garden.chmod(0o600)
    ours: list[str] = []
    assert backup(garden, mark(OLD), ours) == ""
    save(garden, NEW, expect=mark(OLD))
    assert garden.with_name("garden.yaml.bak").read_text() == OLD
    assert backup(garden, mark(NEW), ours) == ""
    assert backup_of(garden).read_text() == NEW
    assert stat.S_IMODE(backup_of(garden).stat().st_mode) == 0o600
    assert ours == [mark(OLD).sha256, mark(NEW).sha256] and len(others(garden)) == 1


def test_a_disk_that_takes_no_copy_is_told_and_a_file_gone_or_changed_is_not_copied(garden):
    full = Faulty("write", 1, errno.ENOSPC, True)
    with pytest.raises(NotSaved, match="The disk is full"):
        backup(garden, mark(OLD), [], os_layer=full)
    assert backup(garden, mark(NEW), []) == "" and others(garden) == []
    garden.unlink()
    assert backup(garden, mark(OLD), []) == "" and others(garden) == []


def test_another_version_is_kept_beside_and_never_over_anything(garden):
    first = save_beside(garden, b"theirs", "conflict")
    second = save_beside(garden, b"ours", "conflict")
    assert [first.name, second.name] == ["garden.conflict.yaml", "garden.conflict-2.yaml"]
    assert first.read_bytes() == b"theirs" and garden.read_text() == OLD


def test_opening_a_path_that_is_no_file_says_why(tmp_path, garden):
    loop, dangling, fifo = tmp_path / "loop", tmp_path / "dangling", tmp_path / "fifo"
    loop.symlink_to(loop)
    dangling.symlink_to("nowhere.yaml")
    os.mkfifo(fifo)
    sparse = tmp_path / "sparse"
    with sparse.open("wb") as file:
        file.truncate(10 * 2**30)
    for path, said in [
        (tmp_path / "no.yaml", "no file"), (tmp_path / "no" / "a", "no folder"),
        (tmp_path, "a folder"), (fifo, "not a plain file"), ("/dev/zero", "not a plain file"),
        ("/dev/tty", ""), ("/dev/null", "not a plain file"), (dangling, "link to nowhere.yaml"),
        (loop, "circle"), (sparse, "larger than"), ("a\0b", "not the name"), ("", "not the name"),
        ("x" * 5000, "too long"), (garden / "a", "not a folder"), ("/proc/self/mem", ""),
        (tmp_path / "\x1b[2J\udcff", "<U+001B>[2J<U+DCFF>"),
    ]:  # fmt: skip
        with pytest.raises(NotLoaded) as caught:
            load(path)
        assert said in caught.value.sentence and caught.value.sentence.isprintable()
    with pytest.raises(NotLoaded) as caught:
        load(tmp_path / "no.yaml")
    assert caught.value.missing and not (tmp_path / "no.yaml").exists()


def test_opening_gives_the_answers_and_their_fingerprint_and_changes_nothing(garden):
    before = garden.stat()
    parsed, found = load(garden)
    assert parsed.text == OLD and found == mark(OLD)
    assert garden.stat().st_mtime_ns == before.st_mtime_ns
    odd = garden.with_name("-\n\x1b.yaml")
    odd.write_text("a: [")
    with pytest.raises(Unreadable):
        load(odd)


@pytest.mark.parametrize("code", [errno.EIO, errno.EMFILE, errno.EACCES])
@pytest.mark.parametrize("call", ["open", "read", "fstat", "stat"])
def test_a_fault_while_reading_is_told(garden, call, code):
    with pytest.raises(NotLoaded):
        load(garden, os_layer=Faulty(call, 1, code, True))


def test_a_file_that_is_just_being_written_is_read_once_more(garden):
    class Growing(OsLayer):
        times = 1

        def read(self, fd, count):
            data = super().read(fd, count)
            if not data and self.times:
                self.times -= 1
                garden.write_text(NEW + "# more\n")
            return data

    assert load(garden, os_layer=Growing())[0].text == NEW + "# more\n"


def test_a_taken_name_gets_a_number_even_if_only_its_capitals_differ(tmp_path):
    for name in ("Maple.yaml", "maple-2.yaml"):
        (tmp_path / name).touch()
    assert free_name(tmp_path, "MAPLE.yaml").name == "MAPLE-3.yaml"
    assert free_name(tmp_path, "oak.yaml").name == "oak.yaml"
    (tmp_path / ("x" * 195 + ".yaml")).touch()
    assert len(free_name(tmp_path, "x" * 195 + ".yaml").name) == 200


def test_a_report_may_not_take_the_place_of_the_answers(garden, tmp_path):
    link = tmp_path / "report.txt"
    link.symlink_to(garden)
    lock_of(garden).touch()
    assert all(belongs_to(garden, p) for p in (garden, link, backup_of(garden), lock_of(garden)))
    assert belongs_to(garden, tmp_path / "GARDEN.yaml")
    assert not belongs_to(garden, tmp_path / "garden.txt")


def test_a_report_is_put_whole_or_not_at_all(tmp_path):
    put(tmp_path / "report.txt", b"words", expect=None)
    assert (tmp_path / "report.txt").read_bytes() == b"words"
    for place in (tmp_path, tmp_path / "no" / "r.txt", "/dev/full"):
        with pytest.raises(NotSaved):
            put(place, b"words", expect=None)
