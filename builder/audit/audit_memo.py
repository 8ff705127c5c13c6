"""What the audit of a course has found, kept for the next audit of the same course in the same process."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from journeybook.audit.alike_texts import AlikeTexts
from journeybook.content.memo import Memo
from journeybook.content.model import Bank, Question
from journeybook.diagnostics.problem import Problem


class AuditMemo(Memo):
    """By bank and by question; one of the last audit is known by being the same object.

    A memo serves one course, one audit at a time.
    """

    def __init__(self) -> None:
        super().__init__()
        self._alike: AlikeTexts[str, Question] | None = None

    def alike(self, plain: Callable[[Question], str]) -> AlikeTexts[str, Question]:
        """The texts of the course's questions as the last audit compared them."""
        if self._alike is None:
            self._alike = AlikeTexts(plain)
        return self._alike

    def of_bank(self, rule: Callable[[Bank], Iterable[Problem]], bank: Bank) -> Sequence[Problem]:
        """What a rule finds in a bank that needs to know nothing else."""
        return self.same((rule, bank.id), (bank,), lambda: list(rule(bank)))
