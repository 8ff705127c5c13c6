"""A site knows the keys it trusts by the signed list that mkdocs.yml names, and by no other."""

from __future__ import annotations

import html
import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from journeybook.building import finished_site
from journeybook.cli import main
from journeybook.mkdocs_adapter import read_project
from journeybook.proof.did_key import did_of
from journeybook.proof.trust_list import TrustList, write
from journeybook.settings import problems_of_settings
from journeybook.site_cache import key_of
from journeybook.trust_setting import trust_of

KEY = Ed25519PrivateKey.from_private_bytes(bytes([1]) * 32)
LIST = TrustList(
    issuer=did_of(KEY.public_key().public_bytes_raw()),
    holder="Quillon Basin Works",
    number=1,
    made="2026-03-01T08:00:00Z",
)
SIGNED = write(LIST, KEY)


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A first course whose mkdocs.yml names a trust list."""
    CliRunner().invoke(main, ["new", str(tmp_path / "ours")], catch_exceptions=False)
    settings = tmp_path / "ours" / "mkdocs.yml"
    text = settings.read_text(encoding="utf-8")
    changed = re.sub(r"^( *)profile: here$", r"\1profile: here\n\1trust: trust.json", text, flags=re.M)
    settings.write_text(changed, encoding="utf-8")
    assert "trust: trust.json" in changed
    (settings.parent / "trust.json").write_bytes(SIGNED)
    return settings


def codes(site: Path) -> list[str]:
    return [problem.code for problem in trust_of(read_project(site))[1]]


def test_the_list_stands_in_the_checking_page(site: Path) -> None:
    assert problems_of_settings(site) == []
    made = finished_site(read_project(site), name="Ours")
    [page] = [page.html.decode() for page in made.pages if page.path.endswith("checking.html")]
    assert f'data-trust="{html.escape(SIGNED.decode(), quote=True).replace("&quot;", "&#34;")}"' in page


def test_a_site_without_the_setting_knows_no_signer(site: Path) -> None:
    site.write_text(
        site.read_text(encoding="utf-8").replace("trust: trust.json", "trust: ''"), encoding="utf-8"
    )
    made = finished_site(read_project(site), name="Ours")
    [page] = [page.html.decode() for page in made.pages if page.path.endswith("checking.html")]
    assert 'data-trust=""' in page


def test_a_list_that_is_missing_another_file_or_changed_is_a_fault(site: Path) -> None:
    file = site.parent / "trust.json"
    assert codes(site) == []
    file.write_bytes(SIGNED.replace(b"Quillon", b"Quilon"))
    assert codes(site) == ["V003"]
    file.write_bytes(b"{}")
    assert codes(site) == ["V002"]
    file.unlink()
    assert codes(site) == ["V001"]


def test_a_site_with_a_wrong_list_is_not_built(site: Path) -> None:
    (site.parent / "trust.json").write_bytes(b"{}")
    made = finished_site(read_project(site), name="Ours")
    assert made.faulty
    assert "V002" in made.report


def test_a_list_that_cannot_be_checked_is_a_fault(site: Path) -> None:
    program = (
        "import sys; sys.modules['cryptography'] = None\n"
        "from pathlib import Path; from journeybook.mkdocs_adapter import read_project\n"
        "from journeybook.trust_setting import trust_of\n"
        f"print(*[p.code for p in trust_of(read_project(Path({str(site)!r})))[1]])"
    )
    said = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert said.stdout == "V004\n"


def test_a_changed_list_makes_the_site_anew(site: Path) -> None:
    before = key_of(read_project(site), "Ours")
    (site.parent / "trust.json").write_bytes(write(LIST, KEY) + b"\n")
    after = key_of(read_project(site), "Ours")
    assert before
    assert after not in ("", before)
