"""A new bridge: from a form and a few sizes, the drawing growing; or a record sent as a file."""

from collections.abc import Mapping
from datetime import datetime

from starlette.requests import Request
from starlette.responses import Response

from eyebar.bridge.begun import Beginning, begun, layout_of
from eyebar.drawings.skeleton import skeleton
from eyebar.errors import BadRecord, EyebarError, OutOfRange, Unreadable
from eyebar.record import LARGEST, NOT_MEASURED
from eyebar.terms import CurveShape, EndPosts, Form, RoadPlace, SubMembers
from eyebar.views.measure import faults_of
from eyebar.web import urls
from eyebar.web.answers import REFUSED, bench_of, page
from eyebar.web.drafts import Draft
from eyebar.web.forms import Sent, gone_to
from eyebar.web.pages.measure import faults_answer, saved_new

FIELDS = (
    ("form", "Form of the trusses", [str(one) for one in Form]),
    ("panels", "Panels", "7 at 15 ft, or a list: 14 ft, 15 ft, 14 ft"),
    ("depth", "Greatest depth between the chords", "20 ft"),
    ("place", "Where the road runs", [str(one) for one in RoadPlace]),
    ("end_posts", "How the trusses end", ["", *(str(one) for one in EndPosts)]),
    ("sub_members", "In halved panels: what holds the diagonals", [str(one) for one in SubMembers]),
    ("counters", "Counters by name", "U3-L2, U4-L5"),
    ("hip", "Half-hip truss: along, from bearing to hip", "7 ft"),
    ("curve", "The line of a chord that is not level", ["", *(str(one) for one in CurveShape)]),
    ("rise", "Curve: its rise above its first joint", "4 ft"),
    ("sag", "Lenticular truss: its sag below the bearings", "8 ft"),
    ("shoulder", "Five slopes: the joint where it is level", "U3"),
    ("name", "Name of the bridge", "Mill Bridge"),
    ("built", "Year", "1889"),
    ("spacing", "Between the trusses' centres", "16 ft"),
    ("clear_width", "Between the curbs", "14 ft"),
)
"""Name, what it is, and its choices or an example."""
UNTOLD = ("built", "spacing", "clear_width")


def beginning(request: Request) -> Response:
    """The form; and, once it says enough, the truss that it makes, or what is wrong with it."""
    asked = request.query_params
    drawing = ""
    wrong: tuple[str, ...] = ()
    if asked.get("panels") and asked.get("depth"):
        try:
            layout = layout_of(_beginning(asked))
            drawing = skeleton(
                layout.joints, [bar.ends for bar in layout.bars.values()], title="The truss so far"
            )
        except EyebarError as error:
            wrong = tuple(str(error).splitlines())
    return _form(asked, drawing, wrong)


def _form(
    asked: Mapping[str, str], drawing: str, wrong: tuple[str, ...], status: int = 200
) -> Response:
    """The form as it was filled in, and what it makes or what is wrong with it."""
    return page("new.html", FIELDS, asked=asked, drawing=drawing, wrong=wrong, text="", faults=(),
                draft="", status=status)


def begin(request: Request, sent: Sent) -> Response:
    """The record that the form makes, or the one that was sent, as a draft to look at."""
    if "file" in sent.files:
        name, content = sent.files["file"]
        if len(content) > LARGEST:
            raise OutOfRange(f"record {name}", f"{len(content):,} bytes", f"at most {LARGEST:,}")
        try:
            text = content.decode("utf-8")
        except UnicodeDecodeError:
            raise Unreadable(name, "is not text in UTF-8", "save it as UTF-8") from None
    elif sent.text("text"):
        text = sent.whole("text")
    else:
        try:
            text = begun(_beginning(sent.fields), datetime.now().astimezone().date())
        except EyebarError as error:
            return _form(sent.fields, "", tuple(str(error).splitlines()), REFUSED)
    draft = bench_of(request).drafts.keep(Draft(handle="", onto=0, text=text))
    return gone_to(f"{urls.NEW}/{draft}")


def drafted(request: Request) -> Response:
    """A draft of a new record, with its faults where it has some."""
    name = request.path_params["draft"]
    draft = bench_of(request).drafts.get(name, "")
    return page("new.html", FIELDS, asked={}, drawing="", wrong=(), text=draft.text,
                faults=faults_of(draft.text, "record"), draft=name)


def faults(request: Request, sent: Sent) -> Response:
    """The faults of a new record as one types it, with their lines."""
    return faults_answer(request, sent.whole("text"))


def take(request: Request, sent: Sent) -> Response:
    """Take a draft into the register."""
    drafts = bench_of(request).drafts
    draft = Draft(handle="", onto=0, text=sent.whole("text"))
    name = drafts.keep(draft)
    try:
        handle = saved_new(request, draft, sent.text("why") or "first entry")
    except BadRecord:
        return gone_to(f"{urls.NEW}/{name}")
    return gone_to(urls.bridge(handle))


def _beginning(asked: Mapping[str, str]) -> Beginning:
    """What the form says. Raises Unreadable for a word that is none of its choices."""
    def one(name: str) -> str:
        return (asked.get(name) or "").strip()

    try:
        return Beginning(
            form=Form(one("form") or Form.PRATT), panels=one("panels"), depth=one("depth"),
            place=RoadPlace(one("place") or RoadPlace.THROUGH),
            end_posts=EndPosts(one("end_posts")) if one("end_posts") else None,
            sub_members=SubMembers(one("sub_members") or SubMembers.STRUTS),
            counters=one("counters"), hip=one("hip"),
            curve=CurveShape(one("curve")) if one("curve") else None, rise=one("rise"),
            sag=one("sag"), shoulder=one("shoulder"), name=one("name"),
            **{name: one(name) or NOT_MEASURED for name in UNTOLD},
        )
    except ValueError as error:
        raise Unreadable(str(error).split("'")[1], "is none of the choices", "choose one") from None
