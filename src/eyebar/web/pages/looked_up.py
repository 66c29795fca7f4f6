"""What most pages of a bridge begin with: its latest revision, and that revision's rating."""

from dataclasses import dataclass

from starlette.requests import Request

from eyebar.drawings.on_page import sign_on_page
from eyebar.store.asked import KnownBridge, Revision, bridge_named, revision_of
from eyebar.store.issued import ratings_of
from eyebar.views.workbench import Heading, bridge_heading
from eyebar.web.answers import bench_of
from eyebar.web.kept import Rated


@dataclass(frozen=True, slots=True, kw_only=True)
class Latest:
    """A bridge of the register, its latest revision, and the state of its papers in a word."""

    bridge: KnownBridge
    revision: Revision
    signed: str

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
    return Latest(bridge=bridge, revision=revision, signed=signed)


def rated(request: Request, of: Latest) -> Rated:
    """The rating of the latest revision. Raises StillRating, and what a rating raises."""
    return bench_of(request).kept.rated(of.revision.text, of.file)


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """The head of a page of a bridge: words, and the signs as they will stand."""

    words: Heading
    sign: str

    @property
    def key(self) -> str:
        """The bridge's handle."""
        return self.words.handle


def heading(of: Latest, found: Rated) -> Head:
    """The head of a page of the bridge."""
    return Head(
        words=bridge_heading(
            found.rate, found.gathered.describe, handle=of.key,
            revision=of.revision.revision, signed=of.signed,
        ),
        sign=sign_on_page(found.rate["posting"]),
    )
