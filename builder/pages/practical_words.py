"""The words that the form of a practical says, in the reader's language; a part of ``script_words``."""

from __future__ import annotations

from journeybook.pages.words_catalogue import to_translate as _

PRACTICAL_WORDS = (
    _("1 is not confirmed. No step can be marked before it is."),
    _("A blank sheet for the next person?"),
    _(
        "A saved record is not changed. If something on the sheet is wrong, what you save next is "
        "another record, with another fingerprint."
    ),
    _("A step without a mark is saved as “not seen”."),
    _("All of it is confirmed. The steps can be marked."),
    _("Before it can be saved:"),
    _("Choose the result."),
    _("Clear it"),
    _("Clear this sheet"),
    _("Clear this sheet?"),
    _("Critical, and a hint was needed: not yet competent."),
    _("Critical, and not seen: it is shown on another day. Until then not yet competent."),
    _("Critical, and not shown: not yet competent."),
    _("Day"),
    _("End it at once"),
    _("Ended at {time}."),
    _("Fingerprint of the saved record"),
    _("Go on after all"),
    _("It is saved: next person"),
    _("It was ended before its last step."),
    _(
        "It was ended. That is never a mark against anybody, least of all against whoever stopped "
        "for their own safety: the steps are shown again on another day. Until then the record can "
        "only say “not yet competent”."
    ),
    _("Keep it"),
    _("No"),
    _("Not every line of “confirm first” is confirmed."),
    _("Not marked yet:"),
    _("Not seen"),
    _("Note"),
    _("Note on step {number}"),
    _("Nothing is sent, and this browser keeps nothing: save the record before this page is closed."),
    _("Nothing is sent. The sheet is kept on this device until you clear it."),
    _("Number or id"),
    _("Person observed"),
    _("Place"),
    _("practical"),
    _("Print the filled-in sheet"),
    _("Prompted"),
    _("Put something right"),
    _("Result"),
    _("Role"),
    _("Save the file again"),
    _("Save the record"),
    _("Saved"),
    _("Second observer, where there is one"),
    _("step {number}"),
    _("step {number} (critical)"),
    _("Step {number}, critical, is marked “not seen”: {text}"),
    _("Step {number}, critical, is marked “no”: {text}"),
    _("Step {number}, critical, needed a hint: {text}"),
    _("Step {number}, critical: {text}"),
    _("Step {number}: {text}"),
    _("Take the name from a card on this device"),
    _("The employer needs the file or the codes; either is enough."),
    _("The form does not work in this browser. Print the sheet and fill it in by hand."),
    _(
        "The record goes from this device. Go on only when it is in a file or its codes are read, "
        "and its fingerprint is on the paper."
    ),
    _(
        "The record {fingerprint} is saved, and stays what it is. What is saved now is another "
        "record with another fingerprint: on the paper strike the old one out, and write the new one."
    ),
    _("The steps cannot be marked yet. First confirm each line above."),
    _("This course is a draft, not released: no certificate can be signed on this record."),
    _("This is needed."),
    _(
        "This is the record’s fingerprint. The assessor writes the four groups on the paper sheet or "
        "the class sheet, and signs beside them in ink. The ink vouches for the record; this device "
        "signs nothing."
    ),
    _("This sheet is saved. Its fingerprint stands at its end."),
    _(
        "This sheet was begun on an earlier state of the course. The names are still there; each "
        "condition and each step has to be marked again."
    ),
    _("To what is not confirmed"),
    _("Unit, day and place"),
    _("Unit: make, mark or number"),
    _(
        "Watched from {start} to {end} by the clock of the device. The signatures below vouch for "
        "the record with this fingerprint."
    ),
    _("What makes the assessor fit to judge this: training, experience, who named them"),
    _("What stands on it goes from this device, and is not saved anywhere."),
    _("Write the day."),
    _("Write who the assessor is."),
    _("Write who was watched."),
    _("Yes"),
    _("{count} are not confirmed. No step can be marked before they are."),
    _("{marked} of {total} steps marked, each critical one shown"),
    _("{marked} of {total} steps marked, {missed} critical not shown"),
    _("{marked} of {total} steps marked, {waiting} critical not yet"),
    _("{marked} of {total} steps marked, {waiting} critical not yet, {missed} critical not shown"),
    _("“Competent” cannot be chosen:"),
)
"""Only what no other script says as well."""
