"""The refusals: one base class and a handful below it.

Every text says what, where, rule, got and cure in the engineer's words; the facts are attributes
too, so that a page or a JSON answer need not take the sentence apart again.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing wrong with a record: where it stands, the rule, what was found, the cure."""

    where: str
    """Path in the record in words, `members > L1-L2 > width`; empty for the whole file."""
    rule: str
    got: str = ""
    cure: str = ""
    line: int | None = None

    def sentence(self, file: str) -> str:
        """`file:line: where: got rule; cure`, with what is not known left out."""
        place = file if self.line is None else f"{file}:{self.line}"
        return f"{place}: {self.said}"

    @property
    def said(self) -> str:
        """`where: got rule; cure`: where the line stands beside it."""
        body = f"{self.got} {self.rule}" if self.got else self.rule
        text = f"{self.where}: {body}" if self.where else body
        return f"{text}; {self.cure}" if self.cure else text


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word nearest to the one that was written; empty when none is near."""
    by_lower = {str(name).lower(): str(name) for name in known}
    near = get_close_matches(word.lower(), by_lower, n=1, cutoff=0.6)
    return by_lower[near[0]] if near else ""


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """The cure for an unknown word: the nearest known one, or all that are known."""
    words = tuple(known)
    near = nearest(word, words)
    if near:
        return f"did you mean '{near}'?"
    return f"known are: {', '.join(words)}" if words else "none is known here"


def with_article(word: str) -> str:
    """A word of ours with its article: `a length`, `an area`."""
    return f"an {word}" if word[:1] in "aeiou" else f"a {word}"


class EyebarError(Exception):
    """What eyebar refuses to do, and why. `code` is stable and stands in JSON answers."""

    code = "error"

    def __reduce__(self) -> tuple[Any, ...]:
        """As it is, sent from process to process: its sentence is not made again."""
        return _as_it_was, (type(self), self.args, self.__dict__)


def _as_it_was(
    kind: type[EyebarError], said: tuple[Any, ...], facts: dict[str, Any]
) -> EyebarError:
    found = kind.__new__(kind, *said)
    found.__dict__.update(facts)
    return found


class BadRecord(EyebarError):
    """A record (or an office file) with faults: all of them at once.

    Attributes: `file`, `faults` (tuple of Fault, each once, in the order of their lines).
    """

    code = "bad-record"

    def __init__(self, file: str, faults: Iterable[Fault]) -> None:
        self.file = file
        self.faults = tuple(dict.fromkeys(sorted(faults, key=lambda fault: fault.line or 0)))
        super().__init__("\n".join(fault.sentence(file) for fault in self.faults))


class Unreadable(EyebarError):
    """A text that is not what was wanted in its place: a length, a date, a part's address.

    Attributes: `got`, `rule`, `cure`, `where` (or "", where the text stands by itself).
    """

    code = "unreadable"

    def __init__(self, got: str, rule: str, cure: str = "", *, where: str = "") -> None:
        self.got = got
        self.rule = rule
        self.cure = cure
        self.where = where
        place = f"{where}: " if where else ""
        super().__init__(f"{place}{got!r} {rule}" + (f"; {cure}" if cure else ""))


class OutOfRange(EyebarError):
    """A number outside the limits of the formula or rule it was given to.

    Attributes: `what`, `got`, `limit`.
    """

    code = "out-of-range"

    def __init__(self, what: str, got: object, limit: str) -> None:
        self.what = what
        self.got = got
        self.limit = limit
        super().__init__(f"{what} is {got}; it must be {limit}")


class Unstable(EyebarError):
    """A truss that is a mechanism, or that finds no equilibrium under its dead load.

    Attributes: `truss`, `joint` (or ""), `bars`, `panel` (or "").
    """

    code = "unstable"

    def __init__(
        self, text: str, *, truss: str = "", joint: str = "", bars: tuple[str, ...] = (),
        panel: str = "",
    ) -> None:
        self.truss = truss
        self.joint = joint
        self.bars = bars
        self.panel = panel
        super().__init__(text)


class NotMeasured(EyebarError):
    """Something that a strength needs was never measured: the part is not rated.

    Attributes: `part` (address), `what`.
    """

    code = "not-measured"

    def __init__(self, part: str, what: str) -> None:
        self.part = part
        self.what = what
        super().__init__(f"{what} of {part} not measured")


class MissingLibrary(EyebarError):
    """A library that is not part of the plain install. Attributes: `library`, `what`, `extra`."""

    code = "missing-library"

    def __init__(self, library: str, what: str, extra: str) -> None:
        self.library = library
        self.what = what
        self.extra = extra
        super().__init__(
            f"{what} needs the library {library}, which is not installed; type: "
            f"pip install 'eyebar[{extra}]'"
        )


class Unknown(EyebarError):
    """A name that is not there: a vehicle, a part, a demo. Attributes: `what`, `got`, `near`."""

    code = "unknown"

    def __init__(self, what: str, got: str, near: str = "", where: str = "") -> None:
        self.what = what
        self.got = got
        self.near = near
        hint = f"; did you mean {near!r}?" if near else ""
        place = f" in {where}" if where else ""
        super().__init__(f"no {what} {got!r}{place}{hint}")


class NoRegister(EyebarError):
    """A register that cannot be opened, or that cannot take what it was given to keep.

    Attributes: `where` (its place, never with a password), `rule`, `cure`.
    """

    code = "register"

    def __init__(self, where: str, rule: str, cure: str = "") -> None:
        self.where = where
        self.rule = rule
        self.cure = cure
        super().__init__(f"register {where}: {rule}" + (f"; {cure}" if cure else ""))


class ChangedMeanwhile(EyebarError):
    """Another has saved the same record since it was taken: nothing is written over theirs.

    Attributes: `bridge`, `onto`, `latest` (numbers of revisions), `saved` (by whom, when and why),
    `theirs`, `yours` (what changed,
    in sentences), `both` (places that both have changed).
    """

    code = "changed-meanwhile"

    def __init__(
        self, bridge: str, onto: int, latest: int, *, saved: str,
        theirs: tuple[str, ...], yours: tuple[str, ...], both: tuple[str, ...],
    ) -> None:
        self.bridge = bridge
        self.onto = onto
        self.latest = latest
        self.saved = saved
        self.theirs = theirs
        self.yours = yours
        self.both = both
        told = [
            f"bridge {bridge} is at revision {latest} by now ({saved}), and yours was made from"
            f" {onto}; nothing was saved, and your file is as it was",
            f"from {onto} to {latest}:", *(f"  {one}" for one in theirs),
            f"from {onto} to yours:", *(f"  {one}" for one in yours),
        ]
        if both:
            told += ["changed by both:", *(f"  {one}" for one in both)]
        told.append(f"put your changes into revision {latest}, and save that onto {latest}")
        super().__init__("\n".join(told))


class NotWhole(EyebarError):
    """Kept things whose hash does not fit, or that are missing: something was changed unseen.

    Attributes: `where`, `first` (what is wrong first).
    """

    code = "not-whole"

    def __init__(self, where: str, first: str) -> None:
        self.where = where
        self.first = first
        super().__init__(f"{where}: {first}")


class NotAllowed(EyebarError):
    """Something that an account of a shared workbench may not do. Attributes: `name`, `least`."""

    code = "not-allowed"

    def __init__(self, name: str, least: str) -> None:
        self.name = name
        self.least = least
        super().__init__(f"{name} may not do that; it takes the role {least}, or a token that "
                         "changes things; ask whoever keeps the accounts")
