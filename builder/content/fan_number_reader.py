"""Reads the numbers of a bench's description, and notes what is wrong with them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from journeybook.content.arithmetic import Flaw, decimal_text
from journeybook.content.number_values import Sheets, given_number


@dataclass(frozen=True, kw_only=True)
class FanFlaw:
    """Why a bench cannot be worked out."""

    code: str
    thing: object
    """The object of the model it is about."""
    key: str | None
    message: str
    mend: str


class NumberReader:
    """Gives numbers one by one; ``flaws`` fills up on the way."""

    def __init__(self, sheets: Sheets) -> None:
        self.sheets = sheets
        self.flaws: list[FanFlaw] = []

    def flaw(self, code: str, thing: object, key: str | None, message: str, mend: str) -> None:
        """Note one."""
        self.flaws.append(FanFlaw(code=code, thing=thing, key=key, message=message, mend=mend))

    def number(
        self,
        thing: object,
        key: str,
        written: str,
        *,
        least: float = 0,
        most: float = 1e9,
        above: bool = False,
    ) -> Fraction | None:
        """The number under a key, within its bounds; ``above``: more than ``least``."""
        number = given_number(written, self.sheets)
        if isinstance(number, Flaw):
            # A reference that names nothing is told where references are checked.
            if "names no value" not in number.message:
                self.flaw("N001", thing, key, f"{number.message}.", number.mend)
            else:
                self.flaws.append(FanFlaw(code="", thing=thing, key=key, message="", mend=""))
            return None
        if number > most or number < least or (above and number == least):
            low, high = decimal_text(Fraction(least)), decimal_text(Fraction(most))
            wanted = f"more than {low}" if above else f"at least {low}"
            limit = f" and at most {high}" if most < 1e9 else ""
            self.flaw(
                "N003",
                thing,
                key,
                f"`{key}` is {decimal_text(number)}; it has to be {wanted}{limit}.",
                "Correct the number; its unit stands in the handbook beside the key.",
            )
            return None
        return number

    def resolved(self, written: str) -> str:
        """A name as it stands, or the decimal of a number or reference."""
        number = given_number(written, self.sheets)
        return written if isinstance(number, Flaw) else decimal_text(number)
