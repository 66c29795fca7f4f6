import re
from pathlib import Path

from eyebar.office import office_values
from eyebar.vehicles import vehicles_with

PAGE = Path(__file__).parents[2] / "docs" / "office.md"
FILES = re.findall(r"```toml\n# (\w+\.toml)\n(.*?)```", PAGE.read_text("utf-8"), re.DOTALL)


def test_the_folder_that_the_page_shows_is_read(tmp_path: Path) -> None:
    assert [name for name, _ in FILES] == ["values.toml", "policy.toml", "vehicles.toml"]
    for name, text in FILES:
        (tmp_path / name).write_text(text, encoding="utf-8")
    values = office_values(tmp_path)
    assert values.number("yield.wrought iron") == 28.0
    assert values["live factor.legal.low traffic"].confirmed
    assert values.text("posting.level") == "operating"
    assert vehicles_with(tmp_path)["grain cart"].weight_tons == 31.0
