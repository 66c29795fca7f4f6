"""What a page sends: its fields as text, its files as bytes; the page itself runs off the loop."""

from collections.abc import Awaitable, Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import UploadFile
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from eyebar.errors import EyebarError, OutOfRange, Unreadable
from eyebar.record.reading import LARGEST

SEE_OTHER = 303
MOST_FIELDS = 4000
MOST_FILES = 8
LONGEST_NUMBER = 9


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """The fields and the files of a form, by name; of a name that comes twice the last stays."""

    fields: Mapping[str, str]
    files: Mapping[str, tuple[str, bytes]] = field(default_factory=dict)

    def text(self, name: str) -> str:
        """A field without the blanks about it; empty where it was not sent."""
        return self.fields.get(name, "").strip()

    def whole(self, name: str) -> str:
        """A field as it was typed, its lines ended as in a file."""
        return self.fields.get(name, "").replace("\r\n", "\n")


@dataclass(slots=True)
class Faults:
    """What is wrong with a form that was filled in, by its fields; all of it at once."""

    said: dict[str, str] = field(default_factory=dict)
    """Field -> what is wrong with it; the empty name for what is wrong with the whole."""

    @contextmanager
    def at(self, name: str) -> Iterator[None]:
        """What is refused within is a fault of this field."""
        try:
            yield
        except EyebarError as refusal:
            self.add(name, refusal)

    def add(self, name: str, refusal: EyebarError) -> None:
        """Take down what is wrong with a field; of one that is empty, nothing is quoted."""
        said = str(refusal)
        if isinstance(refusal, Unreadable) and not refusal.got:
            said = f"{refusal.rule}; {refusal.cure}" if refusal.cure else refusal.rule
        self.said.setdefault(name, said)

    def __bool__(self) -> bool:
        return bool(self.said)


def whole_number(typed: str, what: str) -> int:
    """A number that was typed or stands in an address. Raises Unreadable."""
    if not typed.isascii() or not typed.isdecimal() or len(typed) > LONGEST_NUMBER:
        raise Unreadable(typed, f"is no number of {what}", "write a whole number")
    return int(typed)


Page = Callable[[Request, Sent], Response]


def posted(page: Page) -> Callable[[Request], Awaitable[Response]]:
    """An address that takes a form."""
    async def taken(request: Request) -> Response:
        async with request.form(
            max_fields=MOST_FIELDS, max_files=MOST_FILES, max_part_size=LARGEST + 1024,
        ) as form:
            fields: dict[str, str] = {}
            files: dict[str, tuple[str, bytes]] = {}
            for name, value in form.multi_items():
                if isinstance(value, UploadFile):
                    if value.filename:
                        files[name] = value.filename, await value.read()
                else:
                    fields[name] = value
        for name, value in fields.items():
            if "\x00" in value:
                raise OutOfRange(f"field {name}", "a text with a null character", "plain text")
        sent = request.state.sent = Sent(fields=fields, files=files)
        return await run_in_threadpool(page, request, sent)
    return taken


def gone_to(address: str) -> Response:
    """The answer to a form that was taken: look there."""
    return RedirectResponse(address, status_code=SEE_OTHER)
