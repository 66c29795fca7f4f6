"""A room imports only rooms below it."""

from tests.house.rooms import PACKAGE, ROOMS, faults, imported_rooms, room_of

MODULES = sorted(PACKAGE.rglob("*.py"))


def test_every_file_stands_in_a_listed_room() -> None:
    astray = [str(module) for module in MODULES if room_of(module) not in ("", *ROOMS)]
    assert not astray, "\n".join(astray)


def test_no_room_imports_a_room_above_it() -> None:
    wrong = [
        f"{module.relative_to(PACKAGE)} {fault}"
        for module in MODULES
        for fault in faults(room_of(module), module.read_text(encoding="utf-8"))
    ]
    assert not wrong, "\n".join(wrong)


def test_the_package_itself_imports_no_room() -> None:
    # `import eyebar` must stay cheap: whoever wants a room imports it by name.
    assert imported_rooms((PACKAGE / "__init__.py").read_text(encoding="utf-8")) == []


def test_an_upward_arrow_is_found_however_it_is_written() -> None:
    # By hand: loads stands before rating in the list, so each of these points upwards.
    for line in (
        "from eyebar.rating import posting",
        "import eyebar.rating.factors",
        "from eyebar import rating",
        "def f():\n    from eyebar.rating.factors import factor",
    ):
        assert len(faults("loads", line)) == 1, line


def test_a_downward_arrow_and_ones_own_room_are_free() -> None:
    assert faults("rating", "from eyebar.loads import lanes\nfrom eyebar.rating.x import y") == []


def test_a_relative_import_and_an_unknown_room_are_found() -> None:
    assert faults("loads", "from . import lanes") != []
    assert faults("loads", "from eyebar.attic import lanes") != []
