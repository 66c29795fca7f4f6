"""Coming in: by the printed key, by name and password; and what a role sees and may do."""

import pytest

from eyebar.web import urls
from tests.browser.conftest import Served, come, log_in, serious_faults

pytestmark = pytest.mark.browser

WREN = "/bridges/31-08"


def test_the_printed_key_lets_in_once_and_a_used_one_is_told_so(browser, served: Served) -> None:
    key = served.root + urls.enter(served.bench.keeper.key)
    first, second = (browser.new_context() for _ in range(2))
    page = first.new_page()
    page.goto(key)
    assert page.url == f"{served.root}/"
    assert page.get_by_role("link", name="Wrenmallow Bridge (invented)").is_visible()
    page = second.new_page()
    answer = page.goto(key)
    assert answer.status == 403
    assert page.get_by_role("heading").inner_text() == "This key is used up"
    # The refusal has the look of the pages, though a stranger is given none of their files.
    assert page.evaluate("getComputedStyle(document.body).maxWidth") != "none"
    assert serious_faults(page) == []
    assert page.goto(served.root + WREN).status == 401
    assert serious_faults(page) == []
    first.close()
    second.close()


def test_a_wrong_password_is_refused_the_right_one_lets_in_and_leaving_ends_it(stranger) -> None:
    stranger.goto(f"{WREN}/measure")
    assert stranger.url.endswith("/login")
    assert stranger.get_by_role("button", name="Leave").count() == 0
    assert serious_faults(stranger) == []
    log_in(stranger, "Reader", "reads nothing at all")
    assert "do not fit" in stranger.get_by_role("alert").inner_text()
    assert stranger.get_by_label("Name").input_value() == "Reader"
    assert stranger.get_by_label("Password").input_value() == ""
    assert serious_faults(stranger) == []
    stranger.goto("/")
    assert stranger.url.endswith("/login")
    log_in(stranger, "Reader")
    stranger.get_by_role("link", name="Wrenmallow Bridge (invented)").wait_for()
    (cookie,) = stranger.context.cookies()
    assert (cookie["secure"], cookie["httpOnly"], cookie["sameSite"]) == (True, True, "Strict")
    stranger.get_by_role("button", name="Leave").click()
    stranger.get_by_label("Password").wait_for()
    stranger.goto(WREN)
    assert stranger.url.endswith("/login")


def changing(page) -> list[str]:
    """The addresses to which the page's forms send what changes something, but for leaving."""
    found = page.evaluate(
        "[...document.querySelectorAll('form, button[formmethod=post]')]"
        ".filter((one) => (one.formMethod || one.method) === 'post')"
        ".map((one) => new URL(one.formAction || one.action).pathname)"
    )
    return sorted({one for one in found if one != "/leave"})


@pytest.mark.parametrize(("name", "measure", "sign"), [
    ("Reader", False, False), ("Engineer", True, True),
])
def test_a_role_sees_the_forms_that_it_may_send(stranger, name, measure, sign) -> None:
    log_in(stranger, name)
    for address in ("/", WREN, f"{WREN}/load", f"{WREN}/weakest", f"{WREN}/revisions"):
        come(stranger, address)
        assert changing(stranger) == []
    assert f"{name}, {name.lower()}" in (
        stranger.locator("footer").inner_text()
    )
    come(stranger, f"{WREN}/measure")
    assert changing(stranger) == ([f"{WREN}/look"] if measure else [])
    assert stranger.locator("#text").is_editable() == measure
    come(stranger, f"{WREN}/field?part=north/L1-L2")
    assert changing(stranger) == ([f"{WREN}/field"] if measure else [])
    come(stranger, f"{WREN}/papers")
    wanted = [f"{WREN}/files"] * measure + [f"{WREN}/issue"] * sign
    assert [one for one in changing(stranger) if not one.endswith("/sign")] == wanted
    stranger.goto("/")
    assert stranger.get_by_role("link", name="A new bridge").count() == int(measure)


def test_a_role_that_may_not_save_is_refused_when_it_tries(stranger, shared: Served) -> None:
    log_in(stranger, "Reader")
    come(stranger, f"{WREN}/measure")
    before = revisions(shared)
    with stranger.expect_navigation() as gone:
        stranger.evaluate(
            f"""() => {{ const form = document.createElement('form');
            form.method = 'post'; form.action = '{WREN}/save'; document.body.append(form);
            form.submit(); }}"""
        )
    assert gone.value.status == 403
    assert stranger.get_by_role("heading").inner_text() == "Not yours to do"
    assert "Nothing was changed" in stranger.locator("main").inner_text()
    assert serious_faults(stranger) == []
    assert revisions(shared) == before
    stranger.get_by_role("link", name="Back").click()
    stranger.wait_for_url(f"**{WREN}/measure")
    assert stranger.goto("/new").status == 403


def revisions(shared: Served) -> int:
    from eyebar.store.asked import latest_of_all

    with shared.bench.register.reading() as connection:
        return sum(one["revision"] for one in latest_of_all(connection))
