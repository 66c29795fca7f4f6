"""How a truss is to be laid out, as it is asked for in a few words, before there is a record."""

from collections.abc import Mapping

from pydantic import ValidationError

from eyebar.errors import BadRecord, Fault
from eyebar.record.trusses import TrussesEntry

Wish = str | tuple[str, ...] | Mapping[str, str]


def trusses_wished(wishes: Mapping[str, Wish], *, asked: str) -> TrussesEntry:
    """The trusses by keys of a record's `trusses` and the texts that were given for them.

    Raises BadRecord with a fault for each that cannot be read; `asked` names who asks.
    """
    try:
        return TrussesEntry.model_validate(dict(wishes))
    except ValidationError as error:
        found = error.errors(include_url=False)
        raise BadRecord(asked, tuple(
            Fault(
                where=" > ".join(str(key) for key in one["loc"]),
                rule=one.get("ctx", {}).get("rule", one["msg"]),
                got=one.get("ctx", {}).get("got", ""), cure=one.get("ctx", {}).get("cure", ""),
            )
            for one in found
        )) from None
