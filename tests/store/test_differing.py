"""What changed between two revisions, in words; what each change did to the posting."""

import pytest

from eyebar.store import effects
from eyebar.store.differing import applied, differences, plain_of
from eyebar.store.effects import compared
from tests.store.samples import text

READING = "      - {part: a/U1-L0, what: thickness, value: 1/2 in}\n"
BEFORE = f"""eyebar: 1
name: A
floor:
  deck: {{thickness: 3 in}}
counters: [U1-L2, U2-L1]
inspections:
  - date: 2021-06-15
    by: crew
    readings:
{READING}"""

# Sentences by hand, from the form that the page on the register tells.
CHANGES = [
    ("thickness: 3 in", "thickness: 2 in", "floor > deck > thickness: was '3 in', is '2 in'"),
    ("name: A\n", "", "name: taken out, 'A'"),
    ("name: A\n", "name: A\nnote: loose rail\n", "note: added, 'loose rail'"),
    ("U2-L1]", "U3-L1]", "counters: was [U1-L2, U2-L1], is [U1-L2, U3-L1]"),
    ("value: 1/2 in", "value: 3/8 in",
     "inspections > 2021-06-15, crew > readings > a/U1-L0, thickness > value:"
     " was '1/2 in', is '3/8 in'"),
    (READING, READING + READING.replace("U1-L0", "U2-L2"),
     "inspections > 2021-06-15, crew > readings > a/U2-L2, thickness: added: value '1/2 in'"),
    (READING, READING + READING.replace("1/2", "5/8"),
     "inspections > 2021-06-15, crew > readings > a/U1-L0, thickness (2): added: value '5/8 in'"),
    (BEFORE[BEFORE.index("inspections"):],
     BEFORE[BEFORE.index("inspections"):] + "  - {date: 2026-06-09, by: crew}\n",
     "inspections > 2026-06-09, crew: added"),
]


@pytest.mark.parametrize(("old", "new", "sentence"), CHANGES)
def test_a_change_is_told_in_words(old: str, new: str, sentence: str) -> None:
    (found,) = differences(BEFORE, BEFORE.replace(old, new))
    assert found.sentence == sentence


@pytest.mark.parametrize(("old", "new", "_sentence"), CHANGES)
def test_a_change_made_in_the_old_text_gives_the_new(old: str, new: str, _sentence: str) -> None:
    """A law: it holds wherever one change is all there is, in both directions."""
    after = BEFORE.replace(old, new)
    for one, other in ((BEFORE, after), (after, BEFORE)):
        (found,) = differences(one, other)
        assert applied(plain_of(one), found) == plain_of(other)


def test_comments_and_the_order_of_keys_are_no_change() -> None:
    other = BEFORE.replace("name: A\n", "").replace("eyebar: 1\n", "eyebar: 1 # first\nname: A\n")
    assert differences(BEFORE, other) == ()


def test_each_change_is_rated_alone_and_all_together(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    def rating(record: object, **_: object) -> dict[str, object]:
        """Stands in for a rating: the posting is the year and the name."""
        said = f"{record.built} {record.name}"  # type: ignore[attr-defined]
        asked.append(said)
        return {"posting": {
            "closed": False, "sign": {"legend": said}, "provisional": False, "exact_tons": 1.0,
        }}

    monkeypatch.setattr(effects, "rate_document", rating)
    after = text().replace("\nbuilt: 1900\n", "\nbuilt: 1899\n").replace(
        "name: Wrenmallow Bridge (invented)", "name: Other"
    )
    found = compared(text(), after, office=None)
    assert found.before.line == "1900 Wrenmallow Bridge (invented)"
    assert found.after.line == "1899 Other"
    alone = {change.place: effect.line for change, effect in found.changes if effect}
    assert alone == {
        "built": "1899 Wrenmallow Bridge (invented)", "name": "1900 Other",
    }
    few = compared(text(), after, office=None, most=1)
    assert [effect for _, effect in few.changes] == [None, None]


def test_a_change_that_cannot_stand_alone_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(effects, "rate_document", lambda *_, **__: {"posting": {
        "closed": True, "sign": None, "provisional": False, "exact_tons": 2.0,
    }})
    after = text().replace("\nbuilt: 1900\n", "\nbuilt: 1650\n")
    ((_, effect),) = compared(text(), after, office=None).changes
    assert effect is not None
    assert "built" in effect.refusal
    before = compared(text(), after, office=None).before
    assert (before.line, before.exact_tons) == ("Close this bridge", 2.0)
