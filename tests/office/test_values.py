import pytest

from eyebar.errors import OutOfRange, Unknown
from eyebar.office import office_values, shipped_values


def test_what_is_read_is_remembered_and_what_is_looked_at_is_not() -> None:
    values = shipped_values()
    values.number("traffic.low")
    values.text("posting.method")
    values.names("posting.vehicles")
    assert values["traffic.high"].unit == "trucks a day"
    assert values.used == {"traffic.low", "posting.method", "posting.vehicles"}


def test_a_watched_copy_has_used_nothing_and_shares_nothing() -> None:
    values = shipped_values()
    values.number("traffic.low")
    copy = values.watched()
    assert copy.used == set()
    copy.number("traffic.high")
    assert values.used == {"traffic.low"}
    assert copy.rows == values.rows


def test_an_unknown_name_is_refused_with_the_nearest_known_one() -> None:
    with pytest.raises(Unknown, match=r"did you mean 'live factor.legal.low traffic'\?"):
        shipped_values().number("live factor.legal.low trafic")


@pytest.mark.parametrize(
    ("reader", "name"),
    [
        ("number", "posting.method"), ("number", "posting.vehicles"), ("text", "traffic.low"),
        ("names", "traffic.low"), ("names", "posting.method"),
    ],
)
def test_a_row_is_not_read_as_what_it_is_not(reader: str, name: str) -> None:
    with pytest.raises(OutOfRange, match=name):
        getattr(shipped_values(), reader)(name)


def test_equal_sets_have_equal_hashes_and_unequal_sets_unequal_ones() -> None:
    other = office_values(exceptions={"traffic.low": (900.0, "trucks a day", "counted")})
    again = office_values(exceptions={"traffic.low": (900, "trucks a day", "counted")})
    assert shipped_values().digest() == office_values().digest()
    assert other.digest() == again.digest()
    assert other.digest() != shipped_values().digest()


def test_unconfirmed_rows_are_listed_by_name_for_what_was_used() -> None:
    values = shipped_values()
    values.number("traffic.low")
    values.number("modulus.wrought iron")
    assert [row.name for row in values.unconfirmed(values.used)] == ["traffic.low"]
    everywhere = {row.name for row in values.unconfirmed()}
    assert everywhere == {name for name in values if not values[name].confirmed}


def test_nothing_is_overridden_in_the_shipped_set() -> None:
    assert shipped_values().overridden() == ()
