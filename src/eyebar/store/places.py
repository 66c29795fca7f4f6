"""Where a register lies: a file, or a PostgreSQL database by its URL."""

import os
import sys
from dataclasses import dataclass
from pathlib import Path

from sqlalchemy.engine import URL, make_url
from sqlalchemy.exc import ArgumentError

from eyebar.errors import NoRegister

FILE = "register.db"
SHARED = frozenset({
    "nfs", "nfs3", "nfs4", "cifs", "smb2", "smb3", "smbfs", "afpfs", "ncpfs", "afs", "coda", "9p",
    "ceph", "lustre", "gpfs", "ocfs2", "gfs2", "davfs", "davfs2", "fuse.sshfs", "fuse.davfs2",
    "fuse.glusterfs", "fuse.rclone", "fuse.s3fs", "fuse.cifs", "fuse.ceph", "fuse.smbnetfs",
    "fuse.gvfsd-fuse", "webdav", "osxfuse", "macfuse", "drvfs",
})
"""Kinds of file system that other machines share, on which a lock may not hold."""

_REMOTE_DRIVE = 4  # of GetDriveType, as the Windows interface documents it


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceOfRegister:
    """A place: `file` for SQLite, None for PostgreSQL; `shown` never holds a password."""

    url: URL
    file: Path | None
    shown: str


def default_file() -> Path:
    """The register in the user's own data folder."""
    if sys.platform == "win32":
        base = Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData" / "Local")
    elif sys.platform == "darwin":
        base = Path.home() / "Library" / "Application Support"
    else:
        base = Path(os.environ.get("XDG_DATA_HOME") or Path.home() / ".local" / "share")
    return base / "eyebar" / FILE


def place_of(written: str | None) -> PlaceOfRegister:
    """The place that a path or a URL names; the default where none is given. Raises NoRegister."""
    if not written:
        return _of_file(default_file())
    if "://" not in written:
        return _of_file(Path(written).expanduser())
    try:
        url = make_url(written)
    except (ArgumentError, ValueError):
        # What was written may hold a password: it is not said again.
        raise NoRegister("URL", "cannot be read as one", _CURE) from None
    shown = url.render_as_string(hide_password=True)
    backend, _, driver = url.drivername.partition("+")
    if backend == "sqlite" and url.database:
        return _of_file(Path(url.database))
    if backend not in ("postgresql", "postgres") or driver not in ("", "psycopg"):
        raise NoRegister(shown, f"eyebar keeps none in {url.drivername!r}", _CURE)
    if not url.database:
        raise NoRegister(shown, "names no database", _CURE)
    return PlaceOfRegister(url=url.set(drivername="postgresql+psycopg"), file=None, shown=shown)


_CURE = "write a path, or postgresql://person@host/database"


def _of_file(path: Path) -> PlaceOfRegister:
    return PlaceOfRegister(
        url=URL.create("sqlite", database=str(path)), file=path, shown=str(path)
    )


def refuse_shared(file: Path, mounts: str | None = None) -> None:
    """Refuse a register on a drive that other machines share.

    `mounts` is the table of mounts as Linux writes it; left out, that of this machine.
    """
    kind = shared_kind(file, mounts)
    if kind:
        raise NoRegister(
            str(file), f"lies on a network drive ({kind}), where locks may not hold and a save may"
            " be lost", "keep it on a disk of this machine and back it up to the drive, or use"
            " PostgreSQL for several people",
        )


def refuse_foreign(file: Path) -> None:
    """Refuse a file that the database would not know as its own. An empty one is let through."""
    if file.is_dir():
        raise NoRegister(str(file), "is a folder", f"name the file in it: {file / FILE}")
    try:
        with file.open("rb") as opened:
            head = opened.read(16)
    except OSError as error:
        rule = f"cannot be read ({error.strerror})"
        raise NoRegister(str(file), rule, "look at the path") from None
    if head and head != b"SQLite format 3\0":
        raise NoRegister(
            str(file), "is no register: the file is something else, or is damaged",
            "look at the path; a damaged one is restored from a backup",
        )


def shared_kind(file: Path, mounts: str | None = None) -> str:
    """The kind of network drive that a file lies on; empty where it lies on a disk."""
    path = Path(os.path.realpath(file))
    if sys.platform == "win32" and mounts is None:
        return _windows_kind(path)
    if mounts is None:
        mounts = _mounts_here()
    found = ""
    longest = -1
    for line in mounts.splitlines():
        fields = line.split(" ")
        if len(fields) < 3:
            continue
        point = fields[1].replace("\\040", " ").replace("\\011", "\t")
        inside = path == Path(point) or Path(point) in path.parents
        if inside and len(point) >= longest:  # a later mount on the same point lies over it
            longest, found = len(point), fields[2].lower()
    return found if found in SHARED else ""


def _mounts_here() -> str:
    """The table of mounts in the form of Linux; empty where it cannot be had."""
    if sys.platform == "darwin":
        import subprocess

        said = subprocess.run(["/sbin/mount"], capture_output=True, text=True, check=False).stdout
        rows = []
        for line in said.splitlines():  # `what on /point (kind, options)`
            head, _, kind = line.rpartition(" (")
            point = head.partition(" on ")[2].replace(" ", "\\040")
            rows.append(f"- {point} {kind.rstrip(')').split(',')[0]}")
        return "\n".join(rows)
    try:
        return Path("/proc/self/mounts").read_text(encoding="utf-8", errors="surrogateescape")
    except OSError:
        return ""


def _windows_kind(path: Path) -> str:
    if str(path).startswith("\\\\"):
        return "a shared folder"
    import ctypes

    kind: int = ctypes.windll.kernel32.GetDriveTypeW(path.anchor)  # type: ignore[attr-defined,unused-ignore]
    return "a mapped drive" if kind == _REMOTE_DRIVE else ""
