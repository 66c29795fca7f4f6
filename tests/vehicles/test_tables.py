from datetime import date
from pathlib import Path

import pytest

from eyebar.errors import BadRecord
from eyebar.vehicles import shipped_vehicles, vehicles_read, vehicles_with

CART = """
[[vehicle]]
name = "grain cart"
class = "everyday"
axles_kip = [8, 14, 40]
spacings_ft = [9, [16, 20]]
gauge_ft = 8
width_ft = 11.5
source = "scale ticket of 3 October 2025"
confirmed = {by = "R. Alder", licence = "12345", date = 2025-10-06, source = "scale ticket"}
"""


def refused(text: str) -> str:
    with pytest.raises(BadRecord) as caught:
        vehicles_read(text.encode(), file="vehicles.toml", layer="office")
    return str(caught.value)


def changed(old: str, new: str) -> str:
    assert old in CART
    return CART.replace(old, new)


def test_the_shipped_table_has_the_listed_vehicles_in_order() -> None:
    # The list is the order's own.
    rated = [name for name, one in shipped_vehicles().items() if one.vehicle_class != "everyday"]
    assert rated == [
        "H15", "H20", "HS15", "HS20", "design truck", "design tandem", "Type 3", "Type 3S2",
        "Type 3-3", "SU4", "SU5", "SU6", "SU7", "EV2", "EV3",
    ]


@pytest.mark.parametrize("name", list(shipped_vehicles()))
def test_a_shipped_vehicle_from_memory_is_not_called_confirmed(name: str) -> None:
    vehicle = shipped_vehicles()[name]
    assert vehicle.source
    assert not (vehicle.confirmed and "from memory" in vehicle.source)


def test_an_offices_table_adds_a_vehicle_and_replaces_one(tmp_path: Path) -> None:
    own = CART + CART.replace("grain cart", "EV2")
    (tmp_path / "vehicles.toml").write_text(own, encoding="utf-8")
    vehicles = vehicles_with(tmp_path)
    cart = vehicles["grain cart"]
    assert (cart.axles_kip, cart.spacings_ft) == ((8.0, 14.0, 40.0), (9.0, (16.0, 20.0)))
    assert (cart.gauge_ft, cart.width_ft, cart.weight_tons) == (8.0, 11.5, 31.0)
    assert (cart.layer, cart.confirmed) == ("office", True)
    assert cart.confirmation is not None
    assert cart.confirmation.on == date(2025, 10, 6)
    assert vehicles["EV2"].weight_tons == 31.0
    assert vehicles["EV3"] == shipped_vehicles()["EV3"]


def test_a_folder_without_vehicles_has_the_shipped_ones(tmp_path: Path) -> None:
    assert vehicles_with(tmp_path) == shipped_vehicles()
    assert vehicles_with(None) == shipped_vehicles()


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("[8, 14, 40]", "[8, -14, 40]", "axles_kip: [8, -14, 40] must be"),
        ("[8, 14, 40]", "[8, 0, 40]", "axles_kip"),
        ("[8, 14, 40]", "[8, nan, 40]", "axles_kip"),
        ("[8, 14, 40]", "[8, inf, 40]", "axles_kip"),
        ("[8, 14, 40]", "[8, true, 40]", "axles_kip"),
        ("[8, 14, 40]", "[8, 14, 40000]", "up to 1000 kip"),
        ("[8, 14, 40]", "[8, 14]", "spacings_ft: must be one fewer than the axles"),
        ("[8, 14, 40]", "[]", "axles_kip"),
        ("[9, [16, 20]]", "[9, [20, 16]]", "spacings_ft"),
        ("[9, [16, 20]]", "[0, 16]", "spacings_ft"),
        ("[9, [16, 20]]", "[[8, 9], [16, 20]]", "one spacing at most may vary"),
        ("gauge_ft = 8", "gauge_ft = 0", "gauge_ft: 0 must be over 0"),
        ("gauge_ft = 8", "gauge_ft = '8 ft'", "gauge_ft"),
        ("width_ft = 11.5", "width_ft = 7", "width_ft: must be no less than the gauge"),
        ("width_ft = 11.5", "", "width_ft: is missing"),
        ("width_ft", "widht_ft", "widht_ft: is unknown; did you mean 'width_ft'?"),
        ('"everyday"', '"everday"', "class: 'everday' must be one of"),
        ('source = "scale ticket of 3 October 2025"', "", "source: is missing"),
        ('licence = "12345", ', "", "confirmed > licence: is missing"),
        ("2025-10-06", '"2025-10-06"', "confirmed > date: '2025-10-06' is not a date"),
        ("width_ft = 11.5", "width_ft = 11.5\ncombine = 'sum'", "lane_kip_per_ft: is missing"),
        ("width_ft = 11.5", "width_ft = 11.5\nlane_kip_per_ft = 0.5", "combine: must be greater"),
        ("[[vehicle]]", "[[vehicles]]", "rows begin with [[vehicle]]"),
        ("gauge_ft = 8", "gauge_ft = ", "is not TOML"),
    ],
)
def test_a_faulty_vehicle_is_refused_with_the_place(old: str, new: str, said: str) -> None:
    assert said in refused(changed(old, new))


def test_all_faults_of_a_table_come_at_once_with_their_lines() -> None:
    two = changed("gauge_ft = 8", "gauge_ft = 0") + changed("[8, 14, 40]", "[8]")
    text = refused(two)
    assert "vehicles.toml:2: vehicle > grain cart > gauge_ft" in text
    assert "vehicles.toml:12: vehicle > grain cart > spacings_ft" in text


def test_a_name_that_stands_twice_is_refused() -> None:
    assert "stands in this table twice" in refused(CART + CART)


def test_a_table_that_is_too_large_or_not_utf_8_is_refused() -> None:
    with pytest.raises(BadRecord, match="larger than 2 MB"):
        vehicles_read(b"#" * 2_000_001, file="vehicles.toml", layer="office")
    with pytest.raises(BadRecord, match="not UTF-8"):
        vehicles_read(b"\xff\xfe", file="vehicles.toml", layer="office")


def test_deep_nesting_is_refused() -> None:
    deep = "[" * 20_000 + "]" * 20_000
    assert "nested too deeply" in refused(f"vehicle = {deep}")
