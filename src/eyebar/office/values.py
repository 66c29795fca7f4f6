"""The set of values that a calculation reads, each row remembering whence it came."""

import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict, dataclass, field, fields, replace

from eyebar.errors import OutOfRange, Unknown, nearest
from eyebar.sources import Confirmation, Value

_KEYS = tuple(one.name for one in fields(Value))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Values:
    """Rows by name, and which of them were read.

    `replaced` holds, for each row that an office or a record laid over, the row below it. `used`
    gathers the names read through `number`, `text` and `names`; looking at a row with `[]` does not
    count as use.
    """

    rows: Mapping[str, Value]
    replaced: Mapping[str, Value] = field(default_factory=dict)
    used: set[str] = field(default_factory=set)

    def __getitem__(self, name: str) -> Value:
        try:
            return self.rows[name]
        except KeyError:
            raise Unknown("value", name, nearest(name, self.rows), "the office's values") from None

    def __contains__(self, name: object) -> bool:
        return name in self.rows

    def __iter__(self) -> Iterator[str]:
        return iter(self.rows)

    def __len__(self) -> int:
        return len(self.rows)

    def number(self, name: str) -> float:
        """The number of a row, in the row's unit; remembers that it was used.

        Raises Unknown where there is no such row, OutOfRange where it holds words.
        """
        value = self[name].value
        if not isinstance(value, float):
            raise OutOfRange(f"value {name!r}", repr(value), "a number to be used as one")
        self.used.add(name)
        return value

    def text(self, name: str) -> str:
        """The word of a row of policy; remembers that it was used. Raises as `number` does."""
        value = self[name].value
        if not isinstance(value, str):
            raise OutOfRange(f"value {name!r}", repr(value), "a word to be used as one")
        self.used.add(name)
        return value

    def names(self, name: str) -> tuple[str, ...]:
        """The list of names in a row of policy; remembers its use. Raises as `number` does."""
        value = self[name].value
        if not isinstance(value, tuple):
            raise OutOfRange(f"value {name!r}", repr(value), "a list of names to be used as one")
        self.used.add(name)
        return value

    def watched(self) -> "Values":
        """The same rows with nothing used yet."""
        return replace(self, used=set())

    def overridden(self) -> tuple[tuple[Value, Value], ...]:
        """(row as it holds, row it replaced) for every row laid over, in the order of names."""
        return tuple((self.rows[name], self.replaced[name]) for name in sorted(self.replaced))

    def unconfirmed(self, names: Iterable[str] | None = None) -> tuple[Value, ...]:
        """The unconfirmed ones among these rows (all rows by default), in the order of names."""
        chosen = self.rows if names is None else names
        return tuple(self[name] for name in sorted(chosen) if not self[name].confirmed)

    def digest(self) -> str:
        """A hash of the whole set (SHA-256, hexadecimal): equal sets, equal hash."""
        rows = [
            {key: _plain(getattr(self.rows[name], key)) for key in _KEYS}
            for name in sorted(self.rows)
        ]
        written = json.dumps(rows, sort_keys=True, default=str)
        return hashlib.sha256(written.encode()).hexdigest()


def _plain(given: object) -> object:
    """A field of a row as it is written into the hash."""
    return asdict(given) if isinstance(given, Confirmation) else given
