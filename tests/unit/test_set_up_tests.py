"""The set-up of the tests on machines that it has never seen: a folder of stand-ins is all that it finds."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
BASH = shutil.which("bash") or ""
REAL = ("cat", "chmod", "dirname", "env", "grep", "head", "readlink")
WANTED = ("node", "npm", "chromium", "firefox-esr", "pdftotext")
GIVES = {
    "nodejs": "node",
    "npm": "npm",
    "chromium": "chromium",
    "firefox-esr": "firefox-esr",
    "poppler-utils": "pdftotext",
}
"""Package -> its command."""

pytestmark = pytest.mark.skipif(not BASH, reason="a shell script is for systems that have bash")


class Machine:
    """A computer with few commands; each that counts writes its call into a log."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.bin = folder / "bin"
        self.log = folder / "log"
        self.bin.mkdir()
        self.log.write_text("")
        (folder / "tools").mkdir()
        shutil.copy(ROOT / "tools" / "set_up_tests.sh", folder / "tools")
        for name in REAL:
            (self.bin / name).symlink_to(shutil.which(name) or "")
        self.command("id", "echo 0")
        self.command("npm", 'echo "npm $*" >>"$LOG"')
        self.command("node", "echo v20.20.2")
        for name in ("chromium", "firefox-esr", "pdftotext"):
            self.command(name)

    def command(self, name: str, does: str = ":") -> Path:
        path = self.bin / name
        path.unlink(missing_ok=True)
        path.write_text(f"#!{BASH}\n{does}\n")
        path.chmod(0o755)
        return path

    def without(self, *names: str) -> None:
        for name in names:
            (self.bin / name).unlink()

    def with_apt(self, update: str = "exit 0", install: str = "", candidates: str = "1.0") -> None:
        """An apt-get that puts the commands of its packages into place."""
        gives = "\n".join(f"{package}) made={command};;" for package, command in GIVES.items())
        does = {"node": "echo v20.20.2"}
        put = "\n".join(
            f'{command}) printf "#!{BASH}\\n{does.get(command, ":")}\\n" >"{self.bin}/{command}";;'
            for command in GIVES.values()
        )
        # A default install puts in place what was asked for; what follows the options are packages.
        install = install or (
            'for package in "$@"; do made=; case "$package" in '
            f'{gives}\nesac\ncase "$made" in {put}\nesac\n[ -z "$made" ] || chmod +x "{self.bin}/$made"; done'
        )
        self.command(
            "apt-get",
            f'echo "${{DEBIAN_FRONTEND:-}} apt-get $*" >>"$LOG"\n'
            f'case "$*" in *" update") {update};; *" install "*) {install};; esac',
        )
        self.command("apt-cache", f'echo "  Candidate: {candidates}"')

    def not_root(self) -> None:
        self.command("id", "echo 1000")

    def with_sudo(self) -> None:
        # As the real one: nothing of the caller's environment comes through.
        self.command("sudo", 'echo sudo >>"$LOG"\nexec env -i LOG="$LOG" PATH="$PATH" "$@"')

    def set_up(self, **variables: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [BASH, str(self.folder / "tools" / "set_up_tests.sh")],
            env={"PATH": str(self.bin), "LOG": str(self.log), **variables},
            capture_output=True,
            text=True,
            timeout=60,
            check=False,
        )

    @property
    def calls(self) -> list[str]:
        return self.log.read_text().splitlines()


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path)


def sentence(done: subprocess.CompletedProcess[str]) -> str:
    """What was said by the one line of the set-up that ended it."""
    assert done.returncode == 1, done
    said = [line for line in done.stderr.splitlines() if line.startswith("set-up: ")]
    assert len(said) == 1, done.stderr
    return said[0].removeprefix("set-up: ")


NPM_CI = "npm ci --no-audit --no-fund --loglevel=error"
APT = "noninteractive apt-get -qq -o DPkg::Lock::Timeout=300"
EVERYTHING = "nodejs npm chromium firefox-esr poppler-utils"


def test_where_everything_is_there_only_the_packages_of_node_are_fetched(machine: Machine) -> None:
    done = machine.set_up()
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")
    assert machine.calls == [NPM_CI]


def test_root_on_a_bare_machine_gets_everything_through_apt_get(machine: Machine) -> None:
    machine.without(*WANTED)
    machine.with_apt()
    done = machine.set_up()
    assert done.returncode == 0, done.stderr
    assert done.stdout == f"set-up: installing {EVERYTHING}\n"
    assert machine.calls == [
        f"{APT} update",
        f"{APT} install -y --no-install-recommends {EVERYTHING}",
    ]


def test_only_what_is_missing_is_installed(machine: Machine) -> None:
    machine.without("pdftotext")
    machine.with_apt()
    assert machine.set_up().returncode == 0
    assert machine.calls[1:] == [f"{APT} install -y --no-install-recommends poppler-utils", NPM_CI]


def test_somebody_else_installs_through_sudo_and_is_asked_nothing(machine: Machine) -> None:
    machine.without("pdftotext")
    machine.not_root()
    machine.with_sudo()
    machine.with_apt()
    assert machine.set_up().returncode == 0
    assert machine.calls == [
        "sudo",
        f"{APT} update",
        "sudo",
        f"{APT} install -y --no-install-recommends poppler-utils",
        NPM_CI,
    ]


def test_without_root_and_sudo_it_says_what_to_install(machine: Machine) -> None:
    machine.without("chromium", "pdftotext")
    machine.not_root()
    machine.with_apt()
    said = sentence(machine.set_up())
    assert said == "please install as root: chromium poppler-utils (sudo is not here)"
    assert machine.calls == []


def test_without_apt_get_it_says_what_to_install(machine: Machine) -> None:
    machine.without("firefox-esr")
    assert sentence(machine.set_up()) == (
        "please install: firefox-esr (this script installs through apt-get, which is not here)"
    )


def test_without_a_network_it_says_what_to_install(machine: Machine) -> None:
    machine.without("node", "npm")
    machine.with_apt(update="exit 100")
    assert sentence(machine.set_up()) == (
        "apt-get update failed (is there a network, and may you install?); please install: nodejs npm"
    )


def test_a_package_that_cannot_be_installed_is_named(machine: Machine) -> None:
    machine.without("pdftotext")
    machine.with_apt(install="exit 100")
    assert (
        sentence(machine.set_up()) == "apt-get could not install: poppler-utils; please install that by hand"
    )


@pytest.mark.parametrize("candidate", ["(none)", ""])
def test_where_a_browser_comes_as_a_snap_only_it_says_how_to_go_on(machine: Machine, candidate: str) -> None:
    machine.without("chromium")
    machine.with_apt(candidates=candidate)
    said = sentence(machine.set_up())
    assert said.startswith("apt-get has no package for: chromium; please install that in another way")
    assert "CHROMIUM=/path FIREFOX=/path make test" in said
    assert not [call for call in machine.calls if "install" in call]


def test_a_package_that_only_starts_a_snap_does_not_do(machine: Machine) -> None:
    machine.without("chromium")
    path = machine.bin / "chromium"
    script = f"#!{BASH}\\nexec /snap/bin/chromium\\n"
    machine.with_apt(install=f'printf "{script}" >"{path}"; chmod +x "{path}"')
    assert sentence(machine.set_up()) == (
        "please install Chromium or Chrome as a package, not as a snap, or name it: CHROMIUM=/path make test"
    )


def test_a_link_to_a_snap_is_none_of_the_browsers(machine: Machine) -> None:
    snap = machine.folder / "usr" / "snap"
    snap.parent.mkdir()
    snap.write_text(f"#!{BASH}\n")
    snap.chmod(0o755)
    (machine.bin / "firefox-esr").unlink()
    (machine.bin / "firefox").symlink_to(snap)
    assert "please install: firefox-esr" in sentence(machine.set_up())


@pytest.mark.parametrize(
    ("usual", "other"),
    [("firefox-esr", "firefox"), ("chromium", "chromium-browser"), ("chromium", "google-chrome")],
)
def test_a_browser_may_have_another_name(machine: Machine, usual: str, other: str) -> None:
    machine.without(usual)
    machine.command(other)
    assert machine.set_up().returncode == 0
    assert machine.calls == [NPM_CI]


def test_a_browser_may_be_named(machine: Machine) -> None:
    machine.without("chromium", "firefox-esr")
    own = machine.command("own-browser")
    assert machine.set_up(CHROMIUM=str(own), FIREFOX=str(own)).returncode == 0


def test_a_browser_that_is_named_and_not_there_is_told(machine: Machine) -> None:
    said = sentence(machine.set_up(CHROMIUM="/nowhere/chromium"))
    assert said == "there is no program /nowhere/chromium; correct CHROMIUM or FIREFOX, or leave it unset"


@pytest.mark.parametrize("version", ["v12.22.9", "v18.18.2"])
def test_a_node_that_is_too_old_is_told(machine: Machine, version: str) -> None:
    machine.command("node", f"echo {version}")
    assert sentence(machine.set_up()) == f"please install Node 18.19 or newer; this is {version}"


@pytest.mark.parametrize("version", ["v18.19.0", "v22.1.0"])
def test_a_node_that_is_new_enough_will_do(machine: Machine, version: str) -> None:
    machine.command("node", f"echo {version}")
    assert machine.set_up().returncode == 0


def test_a_node_that_does_not_start_is_told(machine: Machine) -> None:
    machine.command("node", "exit 127")
    assert sentence(machine.set_up()) == "node does not start; please install Node 18.19 or newer"


def test_packages_of_node_that_cannot_be_had_are_told(machine: Machine) -> None:
    machine.command("npm", "exit 1")
    assert sentence(machine.set_up()) == (
        "npm ci failed (is there a network?): the test packages of package-lock.json could not be had"
    )


def test_the_set_up_and_the_tests_look_for_browsers_by_the_same_names() -> None:
    script = (ROOT / "tools" / "set_up_tests.sh").read_text()
    tests = (ROOT / "tests" / "browser" / "test_browsers.py").read_text()
    for variable in ("CHROMIUM", "FIREFOX"):
        (listed,) = re.findall(rf"^{variable}_NAMES=\((.*)\)$", script, re.MULTILINE)
        quoted = ", ".join(f'"{name}"' for name in listed.split())
        assert f'"{variable}": ({quoted}),' in tests


def test_the_script_may_be_run_from_anywhere(machine: Machine) -> None:
    machine.command("npm", 'echo "$PWD" >>"$LOG"')
    assert machine.set_up().returncode == 0
    assert [os.path.realpath(call) for call in machine.calls] == [os.path.realpath(machine.folder)]
