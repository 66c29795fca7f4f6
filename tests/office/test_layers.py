from datetime import date
from pathlib import Path

import pytest

from eyebar.errors import BadRecord
from eyebar.office import office_values, shipped_values

OWN = """
[[row]]
name = "yield.wrought iron"
value = 28
unit = "ksi"
source = "county tests of 1998"

[[row]]
name = "traffic.low"
confirmed = {by = "R. Alder", licence = "12345", date = 2026-02-03, source = "own copy, p. 6-31"}
"""
POLICY = """
[[row]]
name = "posting.method"
value = "load-factor"
unit = "word"
source = "board's decision of 2019"

[[row]]
name = "posting.level"
value = "operating"
unit = "word"
source = "board's decision of 2019"

[[row]]
name = "posting.vehicles"
value = ["Type 3", "stone cart"]
unit = "vehicles"
source = "board's decision of 2019"
"""
CART = """
[[vehicle]]
name = "stone cart"
class = "everyday"
axles_kip = [8, 14, 40]
spacings_ft = [9, 18]
gauge_ft = 8
width_ft = 11.5
source = "scale ticket"
confirmed = false
"""


@pytest.fixture
def office(tmp_path: Path) -> Path:
    (tmp_path / "values.toml").write_text(OWN, encoding="utf-8")
    (tmp_path / "policy.toml").write_text(POLICY, encoding="utf-8")
    (tmp_path / "vehicles.toml").write_text(CART, encoding="utf-8")
    return tmp_path


def refused(folder: Path, text: str, file: str = "values.toml") -> str:
    (folder / file).write_text(text, encoding="utf-8")
    with pytest.raises(BadRecord) as caught:
        office_values(folder)
    return str(caught.value)


def test_without_folder_and_exceptions_the_shipped_values_hold() -> None:
    assert office_values().rows == shipped_values().rows


def test_the_offices_row_wins_over_the_shipped_one_and_remembers_it(office: Path) -> None:
    values = office_values(office)
    row = values["yield.wrought iron"]
    assert (row.value, row.layer, row.source, row.confirmed) == (
        28.0, "office", "county tests of 1998", False,
    )
    now, before = values.overridden()[-1]
    assert (now, before) == (row, shipped_values()["yield.wrought iron"])


def test_an_office_may_confirm_a_row_without_changing_it(office: Path) -> None:
    row = office_values(office)["traffic.low"]
    shipped = shipped_values()["traffic.low"]
    assert (row.value, row.unit, row.source) == (shipped.value, shipped.unit, shipped.source)
    assert row.confirmed
    assert row.confirmation is not None
    assert (row.confirmation.by, row.confirmation.on) == ("R. Alder", date(2026, 2, 3))


def test_policy_words_and_lists_are_laid_over_too(office: Path) -> None:
    values = office_values(office)
    assert values.text("posting.method") == "load-factor"
    assert values.names("posting.vehicles") == ("Type 3", "stone cart")


def test_the_records_exception_wins_over_the_office_and_keeps_its_reason(office: Path) -> None:
    values = office_values(
        office, exceptions={"yield.wrought iron": (31.5, "ksi", "five coupons of 2024")}
    )
    row = values["yield.wrought iron"]
    assert (row.value, row.layer, row.reason) == (31.5, "record", "five coupons of 2024")
    assert values.replaced["yield.wrought iron"].layer == "office"
    assert values.number("traffic.low") == 1000.0


def test_all_faults_of_a_folder_come_at_once(tmp_path: Path) -> None:
    (tmp_path / "values.toml").write_text(
        OWN.replace("ksi", "psi").replace("traffic.low", "trafic.low"), encoding="utf-8"
    )
    text = refused(tmp_path, POLICY.replace('"load-factor"', '"load factor"'), "policy.toml")
    assert "values.toml, line 2 > yield.wrought iron > unit: 'psi' is not the unit" in text
    assert "values.toml, line 8 > trafic.low: is no value of ours" in text
    assert "did you mean 'traffic.low'?" in text
    assert "policy.toml, line 2 > posting.method > value: 'load factor' must be one of" in text
    assert "policy.toml, line 14 > posting.vehicles > value" in text


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("value = 28", "value = nan", "value: nan is not a number"),
        ("value = 28", "value = inf", "value: inf is not a number"),
        ("value = 28", "value = -28", "value: -28 is under 10 ksi"),
        ("value = 28", "value = 28000", "value: 28000 is over 120 ksi"),
        ("value = 28", "value = true", "value: True is not a number"),
        ("value = 28", "value = '28 ksi'", "value: '28 ksi' is not a number"),
        ("value = 28", "", "value: is missing"),
        ('unit = "ksi"', "", "unit: is missing"),
        ('source = "county tests of 1998"', "", "source: is missing"),
        ('source = "county tests of 1998"', 'source = " "', "source: is missing"),
        ("source", "sorce", "sorce: is unknown; did you mean 'source'?"),
        ("name = \"traffic.low\"", "", "row: has no name"),
        ("traffic.low", "yield.wrought iron", "yield.wrought iron: stands twice"),
        ('licence = "12345", ', "", "confirmed > licence: is missing"),
        ("2026-02-03", "'3 Feb'", "confirmed > date: '3 Feb' is not a date"),
        ("{by", "{bye", "confirmed > by: is missing"),
        ("[[row]]", "[[rows]]", "rows begin with [[row]]"),
        ("value = 28", "value = 2 8", "is not TOML"),
    ],
)
def test_a_faulty_row_is_refused_with_the_place(
    tmp_path: Path, old: str, new: str, said: str
) -> None:
    assert old in OWN
    assert said in refused(tmp_path, OWN.replace(old, new))


def test_a_vehicle_that_nobody_knows_cannot_set_the_posting(office: Path) -> None:
    (office / "vehicles.toml").unlink()
    with pytest.raises(BadRecord, match="names no vehicle with 'stone cart'"):
        office_values(office)


@pytest.mark.parametrize(
    ("method", "level"),
    [("load-and-resistance", "operating"), ("load-factor", "legal"), ("allowable-stress", "legal")],
)
def test_a_posting_level_that_the_method_does_not_have_is_refused(method: str, level: str) -> None:
    with pytest.raises(BadRecord, match="does not go with"):
        office_values(exceptions={
            "posting.method": (method, "word", "trial"), "posting.level": (level, "word", "trial"),
        })


def test_the_closing_limit_cannot_be_lowered() -> None:
    # 23 CFR 650.313: three tons.
    with pytest.raises(BadRecord, match="is under 3 tons"):
        office_values(exceptions={"posting.closing limit": (2.5, "tons", "the mill's truck")})


def test_an_exception_without_reason_unit_or_name_is_refused_in_the_records_words() -> None:
    with pytest.raises(BadRecord) as caught:
        office_values(exceptions={
            "yield.wrought irn": (30.0, "ksi", "coupons"), "traffic.low": (900.0, "", ""),
        })
    text = str(caught.value)
    assert "values > yield.wrought irn: is no value of ours; did you mean" in text
    assert "values > traffic.low > unit: is missing" in text
    assert "values > traffic.low > reason: is missing; say why this bridge differs" in text


def test_a_folder_that_is_not_there_is_refused(tmp_path: Path) -> None:
    with pytest.raises(BadRecord, match="is not a folder"):
        office_values(tmp_path / "nowhere")
