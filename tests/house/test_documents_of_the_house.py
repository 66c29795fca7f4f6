"""The pages in docs/ and the README say what is true."""

import os
import re
import shlex
from pathlib import Path
from types import ModuleType

import pytest
from typer.testing import CliRunner

from eyebar import errors
from eyebar.cli.commands import app
from tests.house import both_ways, formulas_page, how_we_check
from tests.house.how_we_check import section
from tests.house.tracked import ROOT

README = (ROOT / "README.md").read_text(encoding="utf-8")

TYPED = [
    line.split("#")[0].strip()
    for block in re.findall(r"```sh\n(.*?)```", README, flags=re.DOTALL)
    for line in block.splitlines()
]
"""Every line that the README asks its reader to type."""


@pytest.mark.parametrize(
    "written", [how_we_check, formulas_page, both_ways], ids=lambda page: page.__name__
)
def test_a_page_that_the_program_writes_is_up_to_date(written: ModuleType) -> None:
    said: str = written.page()
    page: Path = written.PAGE
    if page.exists() and page.read_text(encoding="utf-8") == said:
        return
    if os.environ.get("CI") != "true":
        page.write_text(said, encoding="utf-8")
    pytest.fail(f"{page.name} was out of date; a run outside CI rewrites it: commit it")


def test_every_published_example_opens_with_its_source() -> None:
    # The printed numbers themselves have a test that is no example.
    files = sorted((ROOT / "tests" / "published").glob("test_*.py"))
    silent = [file.name for file in files if not section(file.read_text(encoding="utf-8"))]
    assert set(silent) <= {"test_printing.py"}


def test_a_test_file_becomes_a_section_of_its_title_and_sentences() -> None:
    # By hand, from the form of the page.
    text = '"""A book, page 3.\n\nTwo bars.\n"""\ndef test_the_bar_pulls(): ...\ndef other(): ...\n'
    assert section(text) == "### A book, page 3\n\nTwo bars.\n\n- The bar pulls.\n"


@pytest.mark.parametrize("line", [line for line in TYPED if line.startswith("make ")])
def test_every_make_target_of_the_readme_is_there(line: str) -> None:
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    for target in line.split()[1:]:
        assert re.search(rf"^{target}:", makefile, flags=re.MULTILINE)


@pytest.mark.parametrize("line", [line for line in TYPED if line.startswith("eyebar ")])
def test_every_command_and_option_of_the_readme_is_there(line: str) -> None:
    command, *rest = shlex.split(line)[1:]
    answer = CliRunner().invoke(app, [command, "--help"])
    assert answer.exit_code == 0
    for option in (word for word in rest if word.startswith("--")):
        assert option in answer.stdout


def test_the_readme_asks_for_nothing_else() -> None:
    known = ("make ", "eyebar ", "pip install .")
    assert [line for line in TYPED if line and not line.startswith(known)] == []


@pytest.mark.parametrize(
    "page_name",
    ["README.md", "CONTRIBUTING.md", "docs/index.md", "docs/documents.md", "docs/gallery.md"],
)
def test_every_link_leads_to_a_file(page_name: str) -> None:
    text = (ROOT / page_name).read_text(encoding="utf-8")
    folder = (ROOT / page_name).parent
    links = re.findall(r"\]\(([^)#:]+)\)", text)
    assert links
    assert [link for link in links if not (folder / link).exists()] == []


def test_every_page_in_docs_is_listed_in_the_index() -> None:
    index = (ROOT / "docs" / "index.md").read_text(encoding="utf-8")
    pages = {page.name for page in (ROOT / "docs").glob("*.md")} - {"index.md"}
    assert {page for page in pages if f"]({page})" not in index} == set()


def test_the_page_on_documents_lists_every_code_that_an_error_may_carry() -> None:
    chapter = (ROOT / "docs" / "documents.md").read_text(encoding="utf-8").split("## Errors")[1]
    listed = set(re.findall(r"^\| `([a-z-]+)` \|", chapter, flags=re.MULTILINE))
    of_the_library = {one.code for one in vars(errors).values() if is_refusal(one)}
    assert listed == {*of_the_library, "file"}


def is_refusal(one: object) -> bool:
    return isinstance(one, type) and issubclass(one, errors.EyebarError) and one.code != "error"
