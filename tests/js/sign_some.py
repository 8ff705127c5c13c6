"""Prints certificates and a trust list, signed as the commands sign them: one JSON array of texts.

The people are invented, and the keys are no secret.
"""

from __future__ import annotations

import json
import sys
from dataclasses import replace
from pathlib import Path

from journeybook.proof import certificate, trust_list

sys.path.insert(0, str(Path(__file__).parents[1] / "unit" / "proof"))
from yard_certificates import KEY, OBSERVED, OTHER, PASSED

WATCHED = replace(OBSERVED, name="Łucja Þorsteinsdóttir-Nguyễn 李娜 “Lu” <b>&", marks=18_333, example=True)
LIST = trust_list.TrustList(
    issuer=PASSED.issuer,
    holder="Quillon Basin Works",
    number=1,
    made="2026-03-05T00:00:00Z",
    keys=(
        trust_list.TrustedKey(
            did=PASSED.issuer,
            holder="Sam Reyes",
            role="assessor",
            from_day="2026-01-01",
            until="2027-01-31",
            demo=True,
        ),
    ),
    withdrawn=((PASSED.id, trust_list.Withdrawal(on="2026-03-04", reason="name misspelt")),),
)

if __name__ == "__main__":
    texts = [certificate.write(each, KEY).decode() for each in (PASSED, WATCHED)]
    texts += [trust_list.write(LIST, KEY).decode(), trust_list.write(LIST, KEY, OTHER).decode()]
    json.dump(texts, sys.stdout)
