"""Measure: the record as text or in forms by group, what a change does, and saving it."""

from dataclasses import replace
from functools import lru_cache

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from eyebar.errors import BadRecord, ChangedMeanwhile, EyebarError, OutOfRange
from eyebar.record import record_of
from eyebar.record.adding import leaves, with_values
from eyebar.store.asked import revision_of
from eyebar.store.differing import differences
from eyebar.store.merging import merged
from eyebar.store.saving import add_bridge, save_revision
from eyebar.views.measure import FieldGroup, effect, faults_of, faults_of_bridge, groups_of
from eyebar.web import urls
from eyebar.web.answers import asking_again, bench_of, page, person_of
from eyebar.web.drafts import Draft
from eyebar.web.forms import Sent, gone_to, whole_number
from eyebar.web.kept import Kept, StillRating
from eyebar.web.making import Document
from eyebar.web.pages.looked_up import Latest, headed, latest


def measure(request: Request) -> Response:
    """The text of the latest revision, or of a draft with its faults or with what it changes."""
    of, asked = latest(request), request.query_params
    draft = Draft(handle=of.key, onto=of.revision.revision, text=of.revision.text)
    name = asked.get("draft", "")
    if name:
        draft = bench_of(request).drafts.get(name, of.key)
    if asked.get("together"):
        return _together(request, of, draft)
    faults = _faults(draft.text, of.file) if name else ()
    judged = None if not name or faults else _judged(request, of, draft)
    answer = page(
        "measure.html", draft, heading=headed(request, of), faults=faults,
        changes=_changes(of.revision.text, draft.text) if name and not faults else (),
        effect=judged, draft=name, groups=_groups(draft.text),
        group=asked.get("group", ""), latest=of.revision, person=person_of(request),
    )
    waits = bool(name) and not faults and judged is None
    return asking_again(request, answer) if waits else answer


READ = 16
"""Texts of which is kept what was read in them: a page that comes back reads no text again."""

_faults = lru_cache(READ)(faults_of)
_changes = lru_cache(READ)(differences)


@lru_cache(READ)
def _groups(text: str) -> tuple[FieldGroup, ...]:
    """The texts of a record by group; none where it cannot be read so far."""
    try:
        return groups_of(leaves(text))
    except BadRecord:
        return ()


def _judged(request: Request, of: Latest, draft: Draft) -> object:
    """What the draft does to the posting; None while it is being rated."""
    kept = bench_of(request).kept
    try:
        return effect(*(
            _rate_or_why(kept, text, file)
            for text, file in ((of.revision.text, of.file), (draft.text, "what you typed"))
        ))
    except StillRating:
        return None


def _rate_or_why(kept: Kept, text: str, file: str) -> Document | str:
    """The `rate` document of a text, or why there is none. Raises StillRating."""
    try:
        return kept.rated(text, file).rate
    except EyebarError as refusal:
        return str(refusal)


def _together(request: Request, of: Latest, draft: Draft) -> Response:
    """A draft with what was saved since it was begun put into it, to be looked at."""
    text = _with_theirs(request, of, draft)
    if text is None:
        raise OutOfRange(
            "draft", "changes what another has changed since", "put together by hand: both are"
            " shown beside one another when you save it",
        )
    name = bench_of(request).drafts.keep(
        replace(draft, onto=of.revision.revision, text=text)
    )
    return gone_to(urls.bridge(of.key, "measure", draft=name))


def _with_theirs(request: Request, of: Latest, draft: Draft) -> str | None:
    """The latest text with a draft's changes; None where they are in each other's way."""
    return merged(_revision(request, of, draft.onto), of.revision.text, draft.text)


def _revision(request: Request, of: Latest, number: int) -> str:
    """The text that a page was made from: numbers of its fields are those of that text."""
    if number == of.revision.revision:
        return of.revision.text
    with bench_of(request).register.reading() as connection:
        return revision_of(connection, of.bridge, number).text


def look(request: Request, sent: Sent) -> Response:
    """Keep what was typed, and show what it does."""
    of, drafts = latest(request), bench_of(request).drafts
    text, onto = sent.whole("text"), whole_number(sent.text("onto"), "a revision")
    if sent.text("group"):
        name = sent.text("draft")
        base = drafts.get(name, of.key).text if name else _revision(request, of, onto)
        text = with_values(base, _changed(base, sent))
    draft = Draft(handle=of.key, onto=onto, text=text, why=sent.text("why"))
    return gone_to(urls.bridge(
        of.key, "measure", draft=drafts.keep(draft), group=sent.text("group")
    ))


def _changed(text: str, sent: Sent) -> dict[tuple[str | int, ...], str]:
    """Path -> what now stands in its field, of those that were changed."""
    found = {}
    for number, (path, value) in enumerate(leaves(text)):
        typed = sent.fields.get(f"leaf {number}")
        if typed is not None and typed.strip() != value:
            found[path] = typed.strip()
    return found


def save(request: Request, sent: Sent) -> Response:
    """Save a draft as a new revision; where another has saved since, both are shown."""
    of, bench = latest(request), bench_of(request)
    draft = bench.drafts.get(sent.text("draft"), of.key)
    record = record_of(draft.text, file="what you typed")
    try:
        save_revision(
            bench.register, of.key, record, onto=draft.onto, person=person_of(request),
            reason=sent.text("why"),
        )
    except ChangedMeanwhile as change:
        of = latest(request)
        mine = replace(draft, why=sent.text("why"))
        together = _with_theirs(request, of, mine) is not None
        return page(
            "meanwhile.html", change, handle=of.key, status=409,
            mine=bench.drafts.keep(mine) if together else "",
            draft=bench.drafts.keep(replace(mine, onto=of.revision.revision)),
        )
    return gone_to(urls.bridge(of.key))


def faults(request: Request, sent: Sent) -> Response:
    """The faults of a text as one types it, with their lines."""
    latest(request)
    return faults_answer(request, sent.whole("text"))


def faults_answer(request: Request, text: str) -> Response:
    """The faults of a text, for the page's script."""
    found = faults_of_bridge(text, "record", bench_of(request).office)
    return JSONResponse({"faults": [{"line": one.line, "said": one.said} for one in found]})


def saved_new(request: Request, draft: Draft, why: str) -> str:
    """Take a new bridge into the register; its handle."""
    bench = bench_of(request)
    record = record_of(draft.text, file="what you typed")
    return add_bridge(bench.register, record, person=person_of(request), reason=why).bridge
