"""What most pages of a bridge begin with: its latest revision, and that revision's rating."""

from dataclasses import dataclass

from starlette.requests import Request

from eyebar.documents.opened import CAUTION, NOT_ASSUMED_SOUND
from eyebar.drawings.on_page import sign_on_page
from eyebar.errors import EyebarError
from eyebar.record import record_of
from eyebar.store.accounts import Caller
from eyebar.store.asked import KnownBridge, Revision, bridge_named, revision_of
from eyebar.store.issued import ratings_of
from eyebar.terms import Role
from eyebar.views.workbench import Heading, bridge_heading, heading_without
from eyebar.web.answers import bench_of, caller_of
from eyebar.web.kept import Rated


@dataclass(frozen=True, slots=True, kw_only=True)
class Latest:
    """A bridge of the register, its latest revision, and the state of its papers in a word."""

    bridge: KnownBridge
    revision: Revision
    signed: str
    caller: Caller

    @property
    def key(self) -> str:
        """Its handle."""
        return self.bridge.handle

    @property
    def file(self) -> str:
        """How its text is called in faults."""
        return f"{self.key}, revision {self.revision.revision}"


def latest(request: Request) -> Latest:
    """The bridge that a request names, with its latest revision. Raises Unknown."""
    with bench_of(request).register.reading() as connection:
        bridge = bridge_named(connection, request.path_params["handle"])
        revision = revision_of(connection, bridge)
        issued = [
            one for one in ratings_of(connection, bridge) if one["revision"] == revision.id
        ]
    signed = "not issued" if not issued else (
        "signed" if any(one["statements"] for one in issued) else "draft, not signed"
    )
    return Latest(bridge=bridge, revision=revision, signed=signed, caller=caller_of(request))


def rated(request: Request, of: Latest) -> Rated:
    """The rating of the latest revision. Raises StillRating, and what a rating raises."""
    return bench_of(request).kept.rated(of.revision.text, of.file)


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """The head of a page of a bridge: words, the signs as they will stand, and who looks at it."""

    words: Heading
    sign: str
    caller: Caller

    @property
    def key(self) -> str:
        """The bridge's handle."""
        return self.words.handle

    @property
    def may_measure(self) -> bool:
        """Whether who looks at it may save records and files."""
        return self.caller.may(Role.MEASURER)

    @property
    def may_sign(self) -> bool:
        """Whether who looks at it may issue and sign ratings, and give slips."""
        return self.caller.may(Role.ENGINEER)


def heading(of: Latest, found: Rated) -> Head:
    """The head of a page of the bridge."""
    return Head(
        words=bridge_heading(
            found.rate, found.describe, handle=of.key,
            revision=of.revision.revision, signed=of.signed,
        ),
        sign=sign_on_page(found.rate["posting"]), caller=of.caller,
    )


def headed(request: Request, of: Latest) -> Head:
    """The head of a page that stands without a rating too: of a bridge that cannot be rated it
    says why, so that its record can be looked at and mended. Raises StillRating."""
    try:
        return heading(of, rated(request, of))
    except EyebarError as refusal:
        record = record_of(of.revision.text, file=of.file)
        words = heading_without(
            record.name, str(refusal), handle=of.key, revision=of.revision.revision,
            cautions=(CAUTION, NOT_ASSUMED_SOUND),
        )
        return Head(words=words, sign="", caller=of.caller)
