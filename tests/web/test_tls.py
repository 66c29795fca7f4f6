"""A shared workbench as it is started by command, asked over the wire: behind TLS of its own, and
behind a proxy that ends TLS before it."""

import http.client
import socket
import ssl
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

import httpx2
import pytest

from eyebar.record import read_record
from eyebar.store.accounts import Accounts
from eyebar.store.opened import opened_register
from eyebar.store.saving import add_bridge
from eyebar.terms import Role
from eyebar.web.serving import LOOPBACK, free_socket
from tests.certificates import Certified, certified
from tests.documents import demos
from tests.web.benches import HANDLE

PASSWORD = "reads a great deal"
SECONDS = 20.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where the register, the accounts and the certificate lie."""

    folder: Path
    tls: Certified

    @property
    def accounts(self) -> Path:
        return self.folder / "accounts.db"


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Place:
    folder = tmp_path_factory.mktemp("shared")
    with opened_register(str(folder / "register.db"), begin=True) as register:
        add_bridge(register, read_record(demos.record("wrenmallow")), person="t", reason="test")
    found = Place(folder=folder, tls=certified(folder))
    accounts = Accounts(found.accounts)
    accounts.add("Reader", Role.READER, PASSWORD)
    accounts.close()
    return found


@contextmanager
def started(place: Place, *options: str) -> Iterator[int]:
    """The workbench as the command starts it, on a free port."""
    with free_socket(0) as taken:
        port = taken.getsockname()[1]
    serving = subprocess.Popen(
        [sys.executable, "-u", "-m", "eyebar", "serve", "--shared", "--name", "localhost",
         "--listen", LOOPBACK, "--port", str(port), "--accounts", str(place.accounts),
         "--register", str(place.folder / "register.db"), *options],
        text=True, stdout=subprocess.PIPE,
    )
    try:
        assert serving.stdout is not None
        assert serving.stdout.readline() == f"Shared at  https://localhost:{port}/\n"
        yield port
    finally:
        serving.terminate()
        serving.communicate()


@pytest.fixture(scope="module")
def port(place: Place) -> Iterator[int]:
    files = place.tls
    with started(place, "--certificate", str(files.certificate), "--key", str(files.key)) as found:
        yield found


def client(place: Place, port: int) -> httpx2.Client:
    return httpx2.Client(base_url=f"https://localhost:{port}", verify=place.tls.trusting,
                         timeout=SECONDS, trust_env=False)


def came_in(asking: httpx2.Client, port: int, password: str = PASSWORD) -> httpx2.Response:
    return asking.post("/login", data={"name": "Reader", "password": password},
                       headers={"origin": f"https://localhost:{port}"})


def test_who_logs_in_over_tls_reads_until_they_leave(place: Place, port: int) -> None:
    with client(place, port) as asking:
        assert asking.get("/").headers["location"] == "/login"
        assert came_in(asking, port, "reads nothing at all").status_code == 401
        assert "set-cookie" not in asking.get("/login").headers
        answer = came_in(asking, port)
        assert (answer.status_code, answer.headers["location"]) == (303, "/")
        cookie = answer.headers["set-cookie"]
        assert cookie.startswith("__Host-")
        assert {"Secure", "HttpOnly", "SameSite=Strict", "Path=/"} <= set(cookie.split("; "))
        assert "max-age=31536000" in answer.headers["strict-transport-security"]
        page = asking.get("/")
        assert page.status_code == 200
        assert HANDLE in page.text
        kept = {"cookie": cookie.split(";")[0]}
        asking.post("/leave", headers={"origin": f"https://localhost:{port}"})
        # Also for whoever copied the cookie before.
        asking.cookies.clear()
        assert asking.get("/", headers=kept).headers["location"] == "/login"


def test_whoever_does_not_trust_the_certificate_gets_nothing(port: int) -> None:
    with (
        httpx2.Client(verify=ssl.create_default_context(), trust_env=False) as stranger,
        pytest.raises(httpx2.ConnectError, match="CERTIFICATE_VERIFY_FAILED"),
    ):
        stranger.get(f"https://localhost:{port}/login")


def test_without_tls_no_page_is_given(port: int) -> None:
    with socket.create_connection((LOOPBACK, port), timeout=SECONDS) as plain:
        plain.sendall(f"GET /login HTTP/1.1\r\nHost: localhost:{port}\r\n\r\n".encode())
        answer = b""
        try:
            while got := plain.recv(4096):
                answer += got
        except ConnectionResetError:
            pass
    assert b"HTTP/" not in answer
    assert b"<" not in answer


def test_another_name_is_refused_over_tls_too(place: Place, port: int) -> None:
    with client(place, port) as asking:
        for host in ("evil.example", f"evil.example:{port}", LOOPBACK, f"{LOOPBACK}:{port}"):
            assert asking.get("/login", headers={"host": host}).status_code == 421
        assert asking.get("/login").status_code == 200


def over_proxy(port: int, source: str, **forwarded: str) -> http.client.HTTPResponse:
    """What the workbench answers to a request that a proxy hands on from an address."""
    asking = http.client.HTTPConnection(LOOPBACK, port, timeout=SECONDS, source_address=(source, 0))
    headers = {f"X-Forwarded-{name}": value for name, value in forwarded.items()}
    asking.request("GET", f"/bridges/{HANDLE}", headers={"Host": "localhost", **headers})
    answer = asking.getresponse()
    answer.read()
    asking.close()
    return answer


def test_only_the_proxy_that_is_named_is_believed(place: Place) -> None:
    liar = "127.0.0.2"
    with started(place, "--proxy", LOOPBACK) as port:
        handed = over_proxy(port, LOOPBACK, Proto="https", For="203.0.113.7")
        assert (handed.status, handed.getheader("location")) == (303, "/login")
        assert over_proxy(port, LOOPBACK).status == 421
        assert over_proxy(port, LOOPBACK, Proto="http").status == 421
        try:
            lied = over_proxy(port, liar, Proto="https")
        except OSError as error:
            if sys.platform == "linux":
                raise
            pytest.skip(f"this system has no {liar}: {error}")
        assert lied.status == 421
    # The trail names who asked, not the proxy.
    accounts = Accounts(place.accounts)
    (line,) = accounts.lines(1)
    accounts.close()
    assert (line["address"], line["what"]) == ("203.0.113.7", f"refused /bridges/{HANDLE}")
