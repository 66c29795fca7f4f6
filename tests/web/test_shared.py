"""A shared workbench: accounts, roles, limits, tokens, TLS or nothing."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from argon2 import PasswordHasher
from starlette.testclient import TestClient

from eyebar.errors import OutOfRange, Unknown
from eyebar.store.accounts import Accounts
from eyebar.terms import Role, Scope
from eyebar.web.app import application
from eyebar.web.keepers import ByAccount, Often
from eyebar.web.serving import Shared, bench_on
from tests.web.benches import HANDLE, Seat

NAME = "bench.example"
HERE = f"https://{NAME}"
ORIGIN = {"origin": HERE}
PASSWORDS = {"Reader": "reads a great deal", "Measurer": "measures a great deal",
             "Engineer": "signs a great deal"}


@pytest.fixture(scope="module", autouse=True)
def light_hashes() -> Iterator[None]:
    """Passwords are kept as they always are, but with less work put into each: many log in here."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(
            "eyebar.store.accounts._HASHER", PasswordHasher(time_cost=1, memory_cost=64)
        )
        yield


@pytest.fixture(scope="module")
def shared(seat: Seat, tmp_path_factory: pytest.TempPathFactory):
    """A shared bench on the register of the session's seat."""
    accounts = Accounts(tmp_path_factory.mktemp("accounts") / "accounts.db")
    for name, password in PASSWORDS.items():
        accounts.add(name, Role(name.lower()), password)
    keeper = ByAccount(hosts=frozenset({NAME}), accounts=accounts)
    with bench_on(seat.bench.register, keeper, office=None) as bench:
        bench.kept.jobs.update(seat.bench.kept.jobs)
        yield bench
    accounts.close()


def client(bench) -> TestClient:
    return TestClient(application(bench, print), base_url=HERE, follow_redirects=False)


def came_in(bench, name: str) -> TestClient:
    found = client(bench)
    answer = found.post("/login", data={"name": name, "password": PASSWORDS[name]}, headers=ORIGIN)
    assert answer.status_code == 303
    return found


def test_a_stranger_is_sent_to_log_in_and_sees_no_bridge(shared) -> None:
    stranger = client(shared)
    for address in ("/", f"/bridges/{HANDLE}", "/new"):
        answer = stranger.get(address)
        assert (answer.status_code, answer.headers["location"]) == (303, "/login")
    assert stranger.get("/json/bridges").status_code == 401
    assert stranger.get("/login").status_code == 200
    assert stranger.get("/static/workbench.css").status_code == 200
    assert stranger.post(f"/bridges/{HANDLE}/issue", headers=ORIGIN).status_code == 401


def test_the_cookie_is_for_tls_and_no_script(shared) -> None:
    answer = client(shared).post(
        "/login", data={"name": "Reader", "password": PASSWORDS["Reader"]}, headers=ORIGIN
    )
    cookie = answer.headers["set-cookie"]
    assert cookie.startswith("__Host-")
    assert all(word in cookie for word in ("Secure", "HttpOnly", "SameSite=Strict", "Path=/"))
    assert "max-age=31536000" in answer.headers["strict-transport-security"]


@pytest.mark.parametrize(("path", "least"), [
    (f"/bridges/{HANDLE}/look", Role.MEASURER), (f"/bridges/{HANDLE}/save", Role.MEASURER),
    (f"/bridges/{HANDLE}/field", Role.MEASURER), (f"/bridges/{HANDLE}/files", Role.MEASURER),
    (f"/bridges/{HANDLE}/issue", Role.ENGINEER), (f"/bridges/{HANDLE}/sign", Role.ENGINEER),
    (f"/bridges/{HANDLE}/slip", Role.ENGINEER), ("/new", Role.MEASURER),
    ("/new/take", Role.MEASURER),
])
def test_a_form_is_taken_from_its_role_on(shared, path: str, least: Role) -> None:
    for name in PASSWORDS:
        enough = list(Role).index(Role(name.lower())) >= list(Role).index(least)
        answer = came_in(shared, name).post(path, data={"x": "y"}, headers=ORIGIN)
        assert (answer.status_code == 403) == (not enough), name


def test_a_list_that_is_shared_does_not_say_where_the_register_lies(seat: Seat, shared) -> None:
    place = seat.bench.register.place.shown
    assert place in seat.get("/")
    page = came_in(shared, "Reader").get("/").text
    assert "Reader, reader" in page
    assert place not in page


def test_who_leaves_is_out_and_a_changed_password_ends_sessions(shared) -> None:
    reader = came_in(shared, "Reader")
    assert reader.get("/").status_code == 200
    assert reader.post("/leave", headers=ORIGIN).status_code == 303
    assert reader.get("/").status_code == 303
    other = came_in(shared, "Reader")
    shared.keeper.accounts.change_password("Reader", "reads even more than that")
    assert other.get("/").status_code == 303
    shared.keeper.accounts.change_password("Reader", PASSWORDS["Reader"])


def test_sessions_end_by_themselves(shared, monkeypatch: pytest.MonkeyPatch) -> None:
    import eyebar.store.accounts as store

    reader = came_in(shared, "Reader")
    now = store._now
    monkeypatch.setattr(store, "_now", lambda hours=0, minutes=0: now(
        hours=hours, minutes=minutes + store.IDLE_MINUTES + 1
    ))
    assert reader.get("/").status_code == 303


def test_too_many_wrong_passwords_shut_the_account_for_a_while(shared) -> None:
    trying = client(shared)
    shared.keeper.of_account.seen.clear()
    for _ in range(5):
        answer = trying.post("/login", data={"name": "Engineer", "password": "x"}, headers=ORIGIN)
        assert answer.status_code == 401
    right = {"name": "Engineer", "password": PASSWORDS["Engineer"]}
    assert trying.post("/login", data=right, headers=ORIGIN).status_code == 401
    shared.keeper.of_account.seen.clear()
    shared.keeper.of_address.seen.clear()
    assert trying.post("/login", data=right, headers=ORIGIN).status_code == 303


def test_what_happens_too_often_is_counted_within_its_while(monkeypatch) -> None:
    from eyebar.web import keepers

    at = [0.0]
    monkeypatch.setattr(keepers.time, "monotonic", lambda: at[0])
    often = Often(3, 60.0)
    assert [often.count("a") for _ in range(4)] == [False, False, False, True]
    assert not often.count("b")
    at[0] = 61.0
    assert not often.count("a")


def test_a_login_from_elsewhere_is_refused(shared) -> None:
    answer = client(shared).post(
        "/login", data={"name": "Reader", "password": PASSWORDS["Reader"]},
        headers={"origin": "https://evil.example"},
    )
    assert answer.status_code == 403


def test_plain_http_and_other_hosts_are_refused(shared) -> None:
    app = application(shared, print)
    assert TestClient(app, base_url=f"http://{NAME}").get("/login").status_code == 421
    assert TestClient(app, base_url="https://evil.example").get("/login").status_code == 421


def test_a_token_reads_and_one_that_writes_saves(shared) -> None:
    accounts = shared.keeper.accounts
    number, reading = accounts.new_token("Measurer", Scope.READ, 30, "nightly")
    _, writing = accounts.new_token("Measurer", Scope.WRITE, 30, "crew's program")
    machine = client(shared)

    def by(token: str) -> dict[str, str]:
        return {"authorization": f"Bearer {token}"}

    assert machine.get("/json/bridges", headers=by(reading)).json()["bridges"]
    record = machine.get(f"/json/bridges/{HANDLE}/record", headers=by(reading)).json()
    changed = re.sub(r"(?m)^owner: .*$", "owner: Another (invented)", record["text"])
    fields = {"text": changed, "onto": str(record["revision"]), "why": "sold"}
    address = f"/json/bridges/{HANDLE}/revisions"
    refused = machine.post(address, data=fields, headers=by(reading))
    assert (refused.status_code, refused.json()["code"]) == (403, "not-allowed")
    wrong = machine.post(address, data={**fields, "text": changed.replace(" ft", " stone", 1)},
                         headers=by(writing))
    assert (wrong.status_code, wrong.json()["code"]) == (422, "bad-record")
    saved = machine.post(address, data=fields, headers=by(writing))
    assert (saved.status_code, saved.json()["number"]) == (201, record["revision"] + 1)
    again = machine.post(address, data={**fields, "text": changed + "\n# more\n"},
                         headers=by(writing))
    assert (again.status_code, again.json()["code"]) == (409, "changed-meanwhile")
    accounts.revoke(number)
    assert machine.get("/json/bridges", headers=by(reading)).status_code == 401
    assert machine.get("/json/bridges", headers=by("nonsense")).status_code == 401


def test_the_trail_says_who_did_what_and_holds_no_secret(shared) -> None:
    accounts = shared.keeper.accounts
    _, secret = accounts.new_token("Reader", Scope.READ, 1, "")
    client(shared).post(f"/bridges/{HANDLE}/look", headers={"authorization": f"Bearer {secret}"})
    came_in(shared, "Measurer").post(f"/bridges/{HANDLE}/look", data={"text": "x", "onto": "1"},
                                     headers=ORIGIN)
    lines = [tuple(one[key] for key in ("account", "what", "status")) for one in accounts.lines(20)]
    assert ("Reader", f"POST /bridges/{HANDLE}/look", 403) in lines
    assert ("Measurer", "log in", 303) in lines
    kept = accounts.file.read_bytes()
    for hidden in (secret, *PASSWORDS.values()):
        assert hidden.encode() not in kept


@pytest.mark.parametrize(("given", "said"), [
    ({}, "without TLS"), ({"certificate": Path("no.pem"), "key": Path("no.key")}, "no.pem"),
    ({"proxy": "anywhere"}, "proxy"), ({"proxy": "10.0.0.5", "name": ""}, "name"),
    ({"certificate": Path("no.pem")}, "without TLS"),
])
def test_it_refuses_to_be_shared_without_tls(given: dict, said: str) -> None:
    wanted = Shared(**{"listen": "127.0.0.1", "name": NAME, "port": 0, "accounts": None, **given})
    with pytest.raises(OutOfRange, match=said):
        wanted.refuse_open()


def test_a_proxy_that_is_named_is_trusted_and_no_other() -> None:
    wanted = Shared(listen="127.0.0.1", name=NAME, port=8443, accounts=None, proxy="10.0.0.5")
    wanted.refuse_open()
    assert wanted.settings() == {"proxy_headers": True, "forwarded_allow_ips": "10.0.0.5"}


@pytest.mark.parametrize(("name", "password", "error"), [
    ("New", "short", OutOfRange), ("Reader", "long enough a password", OutOfRange),
    ("", "long enough a password", OutOfRange),
])
def test_an_account_that_will_not_do_is_refused(shared, name, password, error) -> None:
    with pytest.raises(error):
        shared.keeper.accounts.add(name, Role.READER, password)
    with pytest.raises(Unknown):
        shared.keeper.accounts.end("Nobody")


def test_an_account_that_ended_comes_in_no_more(shared) -> None:
    accounts = shared.keeper.accounts
    accounts.add("Leaver", Role.READER, "leaves before long")
    _, secret = accounts.new_token("Leaver", Scope.READ, 1, "")
    assert accounts.checked("Leaver", "leaves before long") is not None
    accounts.end("Leaver")
    assert accounts.checked("Leaver", "leaves before long") is None
    assert accounts.of_token(secret) is None

