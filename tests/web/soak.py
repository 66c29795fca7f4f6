"""Twenty readers and three writers at one workbench: python -m tests.web.soak 60.

A real `eyebar serve` on a register of the demo bridges. The readers go from page to page. Every
few seconds all three writers add a reading to the same bridge, one by the page for the field, one
by the record as text, one by the interface for programs; whoever is refused because another has
saved tries again. Then the register must hold every reading that was answered as saved, in the
latest revision, none that was refused, and as many revisions as were saved; and its chain must be
sound.
"""

import json
import random
import re
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter, defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from http.client import HTTPConnection
from pathlib import Path
from statistics import median
from urllib.parse import quote, urlencode

from eyebar.record import read_record
from eyebar.record.adding import Read, with_inspection
from eyebar.store.asked import bridge_named, latest_of_all, revision_of, revisions_of
from eyebar.store.opened import opened_register
from eyebar.store.saving import add_bridge
from eyebar.store.verified import verified
from tests.documents import demos

READERS = 20
WAYS = ("field", "text", "program")
PAUSE_SECONDS, ROUND_SECONDS, TRIES = 0.5, 6.0, 4
PATIENCE_SECONDS, IDLE_SECONDS = 60.0, 2.0
ONE_IN_FAULTY = 12
SAVED, REFUSED, CHANGED = (201, 303), 422, 409
PARTS = {"22-03": "west/L1-L2", "31-08": "north/L1-L2"}
"""Bridges that are written to, and a part of each."""
READ = ("07-19", *PARTS)
PAGES = ("", "load", "weakest", "cross", "measure", "field", "revisions", "papers",
         "cross?vehicle=car", "papers/stress sheet.svg")


@dataclass(slots=True)
class Seen:
    """What all readers and writers have seen, counted."""

    taken: dict[str, list[float]] = field(default_factory=lambda: defaultdict(list))
    statuses: Counter[int] = field(default_factory=Counter)
    being_made: int = 0
    saved: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    """Bridge -> the notes of readings that were answered as saved."""
    changed: list[str] = field(default_factory=list)
    """Notes of readings refused because another had saved meanwhile."""
    faulty: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    """What should never be answered."""
    lock: threading.Lock = field(default_factory=threading.Lock)


@dataclass(slots=True, kw_only=True)
class Answer:
    """What came back."""

    status: int
    headers: dict[str, str]
    body: bytes


@dataclass(slots=True, kw_only=True)
class Visitor:
    """One who reads or writes, on a connection of their own."""

    port: int
    cookie: str
    seen: Seen
    chance: random.Random
    connection: HTTPConnection = field(init=False)
    last: float = 0.0

    def __post_init__(self) -> None:
        self.connection = HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE_SECONDS)

    def ask(self, kind: str, address: str, form: dict[str, str] | None = None) -> Answer:
        """A page, or the answer to a form."""
        headers = {"cookie": self.cookie, "origin": f"http://127.0.0.1:{self.port}"}
        sent = None
        if form is not None:
            sent = urlencode(form)
            headers["content-type"] = "application/x-www-form-urlencoded"
        begin = time.monotonic()
        if begin - self.last > IDLE_SECONDS:
            self.connection.close()  # the server may have closed it; it is opened anew
        self.connection.request(
            "GET" if form is None else "POST", quote(address, safe="/?=&"), sent, headers
        )
        answer = self.connection.getresponse()
        found = Answer(
            status=answer.status, body=answer.read(),
            headers={name.lower(): value for name, value in answer.getheaders()},
        )
        self.last = time.monotonic()
        with self.seen.lock:
            self.seen.taken[kind].append(time.monotonic() - begin)
            self.seen.statuses[found.status] += 1
            self.seen.being_made += "refresh" in found.headers
            if found.status >= 500 or (form is None and found.status != 200):
                said = re.sub(r"<[^>]*>", " ", found.body.decode(errors="replace"))
                self.seen.wrong.append(f"{found.status} {address}: {said[-300:]}")
        return found

    def read(self) -> None:
        """One page of any bridge, or the list."""
        page = self.chance.choice(("list", *PAGES))
        if page == "list":
            self.ask("list", "/")
            return
        handle = self.chance.choice(READ)
        self.ask(page or "bridge", f"/bridges/{handle}/{page}".rstrip("/"))

    def write(self, how: str, turn: int, name: str) -> None:
        """A reading of the bridge whose turn it is, again where another has saved meanwhile."""
        handle = list(PARTS)[turn % len(PARTS)]
        for again in range(TRIES):
            if self._written(how, handle, f"note {name}.{turn}.{again}.") != CHANGED:
                break

    def _written(self, how: str, handle: str, note: str) -> int:
        """One reading added to a bridge: in the field, as text, or by a program."""
        faulty = self.chance.randrange(ONE_IN_FAULTY) == 0
        reading = Read(part=PARTS[handle], what="thickness",
                       value="7 stone" if faulty else "17/32 in", note=note)
        saved = {"field": self._in_the_field, "text": self._as_text,
                 "program": self._as_a_program}[how](f"/bridges/{handle}", reading)
        with self.seen.lock:
            if saved.status in SAVED:
                self.seen.saved[handle].append(note)
            elif saved.status == CHANGED:
                self.seen.changed.append(note)
            elif saved.status == REFUSED and faulty:
                self.seen.faulty.append(note)
            else:
                self.seen.wrong.append(f"{saved.status} to {how}: {saved.body[-300:]!r}")
        return saved.status

    def _in_the_field(self, bridge: str, reading: Read) -> Answer:
        looked = self.ask("field, sent", f"{bridge}/field", {
            "date": "2026-11-01", "by": "crew", "part": reading.part, "what 0": reading.what,
            "value 0": reading.value, "note 0": reading.note,
        })
        return self._saved(bridge, looked, reading.note)

    def _as_text(self, bridge: str, reading: Read) -> Answer:
        text, onto = self._record(bridge)
        looked = self.ask("text, sent", f"{bridge}/look", {
            "text": with_inspection(text, date(2026, 11, 1), "crew", [reading]), "onto": onto,
        })
        return self._saved(bridge, looked, reading.note)

    def _as_a_program(self, bridge: str, reading: Read) -> Answer:
        text, onto = self._record(bridge)
        return self.ask("program, saved", f"/json{bridge}/revisions", {
            "text": with_inspection(text, date(2026, 11, 1), "crew", [reading]), "onto": onto,
            "why": reading.note,
        })

    def _record(self, bridge: str) -> tuple[str, str]:
        found = json.loads(self.ask("program, record", f"/json{bridge}/record").body)
        return found["text"], str(found["revision"])

    def _saved(self, bridge: str, looked: Answer, why: str) -> Answer:
        if looked.status != 303:
            return looked
        draft = re.search(r"draft=([^&#]+)", looked.headers["location"])
        assert draft is not None
        return self.ask("saved", f"{bridge}/save", {"draft": draft[1], "why": why})


def soaked(seconds: float, folder: Path, *, seed: int) -> Seen:
    """So many seconds of it, and the register looked at. Raises AssertionError."""
    place = str(folder / "register.db")
    with opened_register(place, begin=True) as register:
        for name in demos.NAMES:
            add_bridge(register, read_record(demos.record(name)), person="soak", reason="first")
    seen = Seen()
    server = subprocess.Popen(
        [sys.executable, "-m", "eyebar", "serve", "--register", place, "--by", "Soak"],
        stdout=subprocess.PIPE, text=True,
    )
    try:
        assert server.stdout is not None
        found = re.search(r"http://127\.0\.0\.1:(\d+)(/\S+)", server.stdout.readline())
        assert found is not None
        _visited(int(found[1]), found[2], time.monotonic() + seconds, seen, seed)
        assert server.poll() is None, "the server ended"
    finally:
        server.terminate()
        server.wait(PATIENCE_SECONDS)
    print(told(seen), flush=True)  # noqa: T201
    _looked_at(place, seen)
    return seen


def _visited(port: int, enter: str, end: float, seen: Seen, seed: int) -> None:
    """Everybody comes and goes on until the end."""
    first = HTTPConnection("127.0.0.1", port, timeout=PATIENCE_SECONDS)
    first.request("GET", enter)
    cookie = (first.getresponse().getheader("set-cookie") or "").partition(";")[0]

    def visitor(name: str) -> Visitor:
        chance = random.Random(f"{seed} {name}")  # noqa: S311,RUF100 - no secret
        return Visitor(port=port, cookie=cookie, seen=seen, chance=chance)

    def reading(one: Visitor) -> None:
        while time.monotonic() < end:
            one.read()
            time.sleep(one.chance.uniform(0.0, PAUSE_SECONDS))

    def writing(one: Visitor, how: str) -> None:
        turn, begin = 0, time.monotonic()
        while time.monotonic() < end:
            one.write(how, turn, how)
            turn += 1
            time.sleep(max(0.0, begin + turn * ROUND_SECONDS - time.monotonic()))

    def told_of(run: Callable[..., None], *of: object) -> None:
        try:
            run(*of)
        except Exception as error:  # noqa: BLE001,RUF100 - told at the end
            with seen.lock:
                seen.wrong.append(f"{of[1:]}: {error!r}")

    threads = [
        *(threading.Thread(target=told_of, args=(reading, visitor(f"reader {i}")))
          for i in range(READERS)),
        *(threading.Thread(target=told_of, args=(writing, visitor(how), how)) for how in WAYS),
    ]
    for one in threads:
        one.start()
    for one in threads:
        one.join()


def _looked_at(place: str, seen: Seen) -> None:
    """Compare what was answered with what is kept."""
    assert not seen.wrong, "\n".join(seen.wrong[:20])
    assert any(seen.saved.values()), "nothing was saved"
    with opened_register(place) as register:
        assert not verified(register).broken
        with register.reading() as connection:
            for one in latest_of_all(connection):
                handle, bridge = one["handle"], bridge_named(connection, one["handle"])
                notes = seen.saved[handle]
                numbers = [each["revision"] for each in revisions_of(connection, bridge)]
                assert numbers == list(range(1, len(notes) + 2)), f"{handle}: {numbers}, {notes}"
                text = revision_of(connection, bridge).text
                lost = [note for note in notes if text.count(note) != 1]
                assert not lost, f"{handle} lost {lost}"
                kept = [note for note in (*seen.changed, *seen.faulty) if note in text]
                assert not kept, f"{handle} holds {kept}, which was refused"


def told(seen: Seen) -> str:
    """What was counted."""
    lines = [f"{'page':<26}{'asked':>7}{'median ms':>11}{'worst ms':>10}"]
    lines += [
        f"{kind:<26}{len(taken):>7}{1000 * median(taken):>11.0f}{1000 * max(taken):>10.0f}"
        for kind, taken in sorted(seen.taken.items())
    ]
    saved = sum(map(len, seen.saved.values()))
    lines += [
        f"{sum(seen.statuses.values())} requests, by status {dict(sorted(seen.statuses.items()))};"
        f" {seen.being_made} were being made",
        f"{saved} readings saved, {len(seen.changed)} refused because another had saved,"
        f" {len(seen.faulty)} because of a fault",
    ]
    return "\n".join(lines)


if __name__ == "__main__":
    length = float(sys.argv[1]) if len(sys.argv) > 1 else 60.0
    begun = random.SystemRandom().randrange(1 << 30)
    print(f"{READERS} readers and {len(WAYS)} writers for {length:g} s, seed {begun}", flush=True)  # noqa: T201
    with tempfile.TemporaryDirectory() as named:
        soaked(length, Path(named), seed=begun)
    print("every reading that was saved is there, none that was refused; the chain is sound")  # noqa: T201
