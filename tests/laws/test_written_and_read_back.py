"""What is written is read back: quantities and part addresses."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from eyebar.addresses import Address, address, bars_of, joint_order
from eyebar.terms import Kind
from eyebar.units import GREATEST, UNITS, Dimension, length_text, quantity, quantity_text

SIXTY_FOURTHS = st.integers(-64 * 12 * 1000, 64 * 12 * 1000).map(lambda n: Fraction(n, 64))


@given(inches=SIXTY_FOURTHS)
def test_a_length_shown_to_the_sixty_fourth_is_read_back_exactly(inches: Fraction) -> None:
    # Condition: the length is a whole number of sixty-fourths of an inch, under 1,000 ft.
    assert quantity(length_text(inches), Dimension.LENGTH, signed=True).exact == inches


@given(data=st.data(), unit=st.sampled_from(sorted(UNITS)))
def test_a_quantity_shown_in_thousandths_of_its_unit_is_read_back_exactly(
    data: st.DataObject, unit: str
) -> None:
    # Condition: a whole number of thousandths of the unit, within the limit for slips of the pen.
    dimension, size = UNITS[unit]
    most = GREATEST[dimension][0] / size * 1000
    exact = data.draw(st.integers(0, int(most))) * size / 1000
    assert quantity(quantity_text(exact, dimension, unit=unit), dimension).exact == exact


LETTERS = st.sampled_from(["U", "L", "M", "A", "Bx"])
JOINTS = st.builds(lambda letters, n: f"{letters}{n}", LETTERS, st.integers(0, 99))
BARS = st.lists(JOINTS, min_size=2, max_size=2, unique=True).map(
    lambda ends: tuple(sorted(ends, key=joint_order))
)
TRUSSES = st.sampled_from(["upstream", "downstream", "north truss", "A"])
PLACES = st.one_of(
    st.sampled_from(["", "mid", "turnbuckle", "thread"]),
    JOINTS.map(lambda joint: f"head {joint}"),
    JOINTS.map(lambda joint: f"4 ft 6 in from {joint}"),
)
ADDRESSES = st.one_of(
    st.builds(
        lambda truss, bar, loose, place: Address(truss=truss, bar=bar, loose=loose, place=place),
        TRUSSES, BARS, st.booleans(), PLACES,
    ),
    st.builds(
        lambda truss, joint, kind, place: Address(
            truss=truss, joint=joint, kind=kind, place=place
        ),
        TRUSSES, JOINTS, st.sampled_from([Kind.PIN, Kind.HANGER, Kind.BEARING]), PLACES,
    ),
    st.builds(
        lambda panel, stringer: Address(kind=Kind.STRINGER, panel=panel, stringer=stringer),
        st.integers(1, 200), st.integers(1, 40),
    ),
    st.builds(lambda joint: Address(kind=Kind.FLOORBEAM, joint=joint), JOINTS),
    st.just(Address(kind=Kind.DECK)),
)


@given(part=ADDRESSES)
def test_an_address_is_read_back_as_it_was(part: Address) -> None:
    assert address(str(part)) == part


@given(first=st.integers(0, 150), count=st.integers(1, 150))
def test_a_run_has_as_many_bars_as_its_numbers_differ(first: int, count: int) -> None:
    bars = bars_of(f"L{first}..L{first + count}")
    assert len(bars) == count == len(set(bars))
    assert bars_of(f"L{first + count}..L{first}") == bars
