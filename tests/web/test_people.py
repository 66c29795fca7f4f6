"""Who measures and who signs, by a file."""

from pathlib import Path

import pytest

from eyebar.errors import BadRecord, OutOfRange, Unknown
from eyebar.terms import Role
from eyebar.web.people import people_of
from eyebar.web.serving import Own, own_keeper

GOOD = """
[[person]]
name = "A. Measurer"
role = "measurer"
[[person]]
name = "E. Engineer"
role = "engineer"
licence = "PE 1"
"""


def written(folder: Path, text: str) -> Path:
    file = folder / "people.toml"
    file.write_text(text, encoding="utf-8")
    return file


def test_people_sit_at_the_bench_with_their_role(tmp_path: Path) -> None:
    people = people_of(written(tmp_path, GOOD))
    assert [one.role for one in people] == [Role.MEASURER, Role.ENGINEER]
    keeper = own_keeper(1, Own(person="A. Measurer", people=people))
    assert keeper.role is Role.MEASURER
    with pytest.raises(OutOfRange, match="--by"):
        own_keeper(1, Own(people=people))
    with pytest.raises(Unknown, match=r"A\. Measurer"):
        own_keeper(1, Own(person="A. Mesurer", people=people))


@pytest.mark.parametrize(("text", "said"), [
    ("x = [", "cannot be read"), ("", "person: is not there"),
    ('[[person]]\nname = "A"\nrole = "boss"', "'boss' is no role"),
    ('[[person]]\nname = "A"\nrole = "engineer"', "has no licence"),
    ('[[person]]\nrole = "reader"', "has no name"),
    ('[[person]]\nname = "A"\nrole = "reader"\nage = 3', "age: is no key"),
])
def test_a_faulty_file_is_told_whole(tmp_path: Path, text: str, said: str) -> None:
    with pytest.raises(BadRecord, match=said.replace("(", r"\(")):
        people_of(written(tmp_path, text))
