"""Certificates to print, all invented: one with an observed practical, one of the knowledge check only."""

from __future__ import annotations

import random
from dataclasses import replace
from datetime import UTC, date, datetime

from paper_demo import COURSE

from journeybook.paper.certificate_sheet import CertificateSheet

MADE = datetime(2026, 11, 28, 9, 30, tzinfo=UTC)
RECORD = b'{"stands for a signed record":"' + b"x" * 1800 + b'"}'
CODE = "JB1:" + "".join(random.Random(7).choices("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:", k=796))
"""The longest code that a certificate may have, 800 signs."""

OBSERVED = CertificateSheet(
    id="urn:uuid:6f1d2c3a-9b8e-4d7f-a1b2-0c3d4e5f6a7b",
    tongue="en",
    language="English",
    issuer="Quillon Basin Works",
    issuer_place="an invented narrowboat and lock-gate repair yard",
    key="QX3F 7KLA M2ZD P4RT 6YHN WJ5S B7CE 4GUV",
    issued=date(2026, 11, 28),
    name="Ines Okafor",
    person="QBW-0417",
    employer="Quillon Basin Works",
    workplace="Slip shed",
    equipment=COURSE.equipment,
    title=COURSE.title,
    version="1.0",
    digest="3f9c2b7e61d04a58" * 4,
    profile="United States, federal rules",
    outcomes=tuple(outcome.text for outcome in COURSE.outcomes),
    marks=57500,
    of=60000,
    cut=80,
    must_pass=(8, 8),
    attempt=2,
    supervised=True,
    identity="photo on the staff card, compared by eye",
    observed=date(2026, 11, 27),
    practicals=tuple(practical.title for practical in COURSE.practicals.values()),
    trainer="T. Marrable",
    assessor="Samuel Reyes",
    trained=date(2026, 11, 24),
    checked=date(2026, 11, 25),
    retrain_by=date(2027, 11, 25),
    fingerprint="K7QD-M2XA-PR4T-6YHN",
    observations=("B7CE-4GUV-QX3F-7KLA", "WJ5S-ZD2P-LM6K-HN4R"),
    cautions=COURSE.cautions,
    limits=COURSE.certificate_limits,
    example=True,
)
CHECK_ONLY = replace(
    OBSERVED,
    supervised=False,
    identity="",
    observed=None,
    observations=(),
    assessor="",
    trainer="",
    trained=None,
)
