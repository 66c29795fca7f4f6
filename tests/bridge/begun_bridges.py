"""Bridges from records that were begun and filled in, for the tests of forms."""

from dataclasses import replace
from datetime import date

from eyebar.bridge.begun import Beginning, begun
from eyebar.bridge.parts import Bridge
from eyebar.bridge.state import bridge_on
from eyebar.office import office_values
from eyebar.record import record_of
from eyebar.record.form_words import CURVED, POINTED
from eyebar.terms import Form, RoadPlace
from tests.bridge.filled import filled

TODAY = date(2026, 11, 1)


def beginning(word: Form, panels: int, **how: object) -> Beginning:
    """What is asked for: panels of 15 ft, 20 ft deep, with the curve that the form needs."""
    found = Beginning(form=word, panels=f"{panels} at 15 ft", depth="20 ft", **how)
    if word in CURVED and word not in POINTED and not found.rise:
        found = replace(found, rise="3 ft")
    if word is Form.CAMELBACK and not found.shoulder:
        hangs = found.place is RoadPlace.DECK
        found = replace(found, shoulder="L2" if hangs else "U2")
    return found


def begun_text(word: Form, panels: int, **how: object) -> str:
    """The text of a record that was begun, with every question answered."""
    return filled(begun(beginning(word, panels, **how), TODAY))


def begun_bridge(
    word: Form, panels: int, *changes: tuple[str, str], **how: object
) -> Bridge:
    """Its bridge, with some of its text replaced; what is replaced must be there."""
    text = begun_text(word, panels, **how)
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return bridge_on(record_of(text, file="begun.yaml", today=TODAY), None, office_values())
