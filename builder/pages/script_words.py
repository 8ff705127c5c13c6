"""The words that the scripts say, in the reader's language.

The scripts hold the English; a test compares this list with every ``Words.say`` in them, both ways.
"""

from __future__ import annotations

from journeybook.pages.checking_words import CHECKING_WORDS
from journeybook.pages.filters import script_json
from journeybook.pages.practical_words import PRACTICAL_WORDS
from journeybook.pages.words_catalogue import load_catalogue
from journeybook.pages.words_catalogue import to_translate as _

SCRIPT_WORDS = (
    _("1 second left"),
    _("1 step to move"),
    _("1 step was refused."),
    _("A check of an earlier state of the course"),
    _("A code for the camera"),
    _("A critical error in a drill fails the check, whatever the marks."),
    _("A drill of the check is gone through once. What came of it is told when the check is handed in."),
    _(
        "A part of this page does not work in this browser. You can still read everything; answers and "
        "reasons stand under each question."
    ),
    _("A ticket has ten signs; these are {length}."),
    _("Alarm sound"),
    _("All questions"),
    _("All read"),
    _("Another card"),
    _("answered"),
    _("Arrow keys move, Space chooses."),
    _("As set"),
    _("Assessor"),
    _("attempt"),
    _("Attempt {number}, as this device remembers."),
    _("Attempt {number}, as this device remembers. Fingerprint of the answers:"),
    _("Back"),
    _("Back to the questions"),
    _("Back to the start"),
    _("Back to the start of the check"),
    _("Back to the start values"),
    _("Begin"),
    _("Begin a new card"),
    _("Begin the check"),
    _("Begin this card"),
    _("Begun"),
    _("begun"),
    _("Begun on this device: {done} of {total} answered. Nothing is lost."),
    _("Begun: {done} of {total} answered."),
    _("By outcome, and what to revisit"),
    _("Call the assessor. These four groups go on the class sheet, beside your signature."),
    _("cannot be read yet"),
    _("card"),
    _("Card of"),
    _("Check this answer"),
    _("Choose at least one first."),
    _("Choose one first."),
    _("Clear this device"),
    _("Clear this device?"),
    _("Close"),
    _("Code before"),
    _("Code {number} of {total}"),
    _("Condemned needlessly. It belongs here: {place}."),
    _("Costs {share} of the mark"),
    _("Critical"),
    _("critical error"),
    _("Critical errors"),
    _("Dangerous, and missed"),
    _("Dangerous, and missed. It belongs here: {place}."),
    _("Done"),
    _("Done."),
    _("entered on the card of {name}"),
    _("Every question is answered. After handing in, nothing can be changed."),
    _("Every record is taken in: clear"),
    _("Everything is done, in a right order."),
    _("Everything lies there again."),
    _("File of the card"),
    _(
        "First save the card of {name} to a file. Then clear it from this device, so that nobody goes on"
        " with it by mistake."
    ),
    _("For the assessor: take the record along"),
    _("For the class sheet"),
    _("Give each line a letter first."),
    _("Give each line the letter of its partner. A letter may be left over."),
    _("Go on with"),
    _("Go on with it"),
    _("Go on with question {number}"),
    _("Go on with the check"),
    _("Go through it again"),
    _("Go through it to the end first."),
    _("Goes with: {answer}."),
    _("Hand in"),
    _("Hand in as it is"),
    _("Hand in the check?"),
    _("Handed in"),
    _("Handed in with this card"),
    _("Hold the picture still"),
    _("I have read this: enter it on the card"),
    _("I have read this: whose card?"),
    _("If the name is not yours, do not begin: call the assessor."),
    _("Is this you?"),
    _("It stands on your slip: two groups of five."),
    _("Keep the one here"),
    _("Keep them"),
    _(
        "Kept here: {handed} handed in, {open} begun. Clear only when each record is with the employer: "
        "saved to a file or read as codes."
    ),
    _("Knowledge check passed"),
    _("Knowledge check: not yet passed"),
    _("Missed"),
    _("Missed. It belongs here: {place}."),
    _("Missed: this belongs to it."),
    _("Moment {number}"),
    _("Move down: {step}"),
    _("Move up: {step}"),
    _("Must-pass"),
    _("Must-pass: {right} of {total} right."),
    _("Name"),
    _("Next"),
    _("Next code"),
    _("Next person"),
    _("Next: the check"),
    _("No limit"),
    _("No place of this sitting has the ticket {ticket}. Compare it with the slip, letter by letter."),
    _("No result yet. Look at line {letters}."),
    _("No result: the numbers are too large."),
    _("No result: with these numbers it would be divided by zero."),
    _("No step was refused."),
    _("No ticket has “{sign}” in it, because it is taken for another sign. Look at the slip again."),
    _("No ticket has “{sign}” in it. Look at the slip again."),
    _("No, that is not me"),
    _("not answered"),
    _("Not answered."),
    _("Not sorted. It belongs here: {place}."),
    _("Not this."),
    _("Not yet"),
    _("not yet passed"),
    _("Not yet: {step}."),
    _("Nothing is timed"),
    _("Open"),
    _("Opening. This takes a moment; on an older device up to a minute."),
    _("Operation {operation}, {minutes} min"),
    _("Other numbers"),
    _("Passed"),
    _("passed, self-recorded"),
    _("Passphrase"),
    _("Place every step first. Still to place: {left}."),
    _("Print the certificate"),
    _("Put the card away"),
    _("Put the card of {name} away"),
    _("Question {number} of {total}"),
    _("Question {number}: {standing}"),
    _("Read"),
    _("Read the lessons named below again. Then take the check again."),
    _("Replace it with the file’s"),
    _("Revisit"),
    _("Right"),
    _("Right."),
    _("Right: {part}"),
    _("Rightly left out."),
    _("Save it to a file, or read the codes with the employer's device; either is enough."),
    _("Save the attempt to a file"),
    _("Save the card to a file"),
    _("Save the record to a file"),
    _("Save what was answered to a file"),
    _("Say in which unit: tap one of the units."),
    _("self-recorded, as this card says"),
    _("Self-recorded: nobody confirmed who answered. The practical was not observed."),
    _("Set the bench first."),
    _("Show it as codes"),
    _("silent"),
    _("Slower"),
    _("Sort each one first. Still to sort: {left}."),
    _("sounds"),
    _("Start again"),
    _("Start here"),
    _("Still to place: {left}."),
    _("Stop here, go on later"),
    _("Take a card out of a file"),
    _("Take the check again"),
    _("Take the last one back"),
    _("Tap the first step, then the next, to the last. Then the arrows can move them."),
    _("Tap the part in the drawing, or choose it in the list."),
    _("Tap what comes next, here or in the drawing. Any order is right that keeps the rules."),
    _("That cannot be read as a number. Write digits, with one comma or point: 12.5."),
    _("That is longer than any number needed here. Write it shorter."),
    _("That passphrase does not open it. Compare each word with the assessor, and their order."),
    _("That unit does not fit here: tap one of the units."),
    _("The assessor reads it out: six words. The first four letters of each are enough."),
    _("The card of {name} is here and in the file. Taking it out of the file replaces the one here."),
    _(
        "The cards on this device cannot be read here; they are left untouched. What you do now is lost "
        "when you close this page, so save the card to a file first."
    ),
    _("The check is entered on a card, and the certificate carries its name."),
    _(
        "The course was changed after this check was handed in. Its questions are no longer in this "
        "page, so it is not marked again here. The file of the attempt holds everything that was "
        "answered."
    ),
    _(
        "The course was changed since you began. What you answered belongs to the earlier state and is "
        "not marked here. Save it to a file; then the check starts again."
    ),
    _("The drill ends here"),
    _("The end"),
    _("The file is there: clear the card from this device"),
    _("The file is there: start the check again"),
    _("The marks are enough. But a must-pass question is not yet right, and each of them has to be."),
    _("The passphrase has six words; these are {count}. Ask the assessor to say it again."),
    _("The questions are read out to you. The assessor knows."),
    _("The questions, your answers and the reasons"),
    _("The way so far"),
    _("The {minutes} min are over. Nothing is cut off: tell the assessor, and finish as you are told."),
    _("These are not answered in full. What is missing counts nothing."),
    _(
        "This browser does not carry your card from page to page when the course is opened from a "
        "folder. Use the one-file edition, or take the card out of a file on each page."
    ),
    _(
        "This browser has no room left. What you do now is lost when you close this page: save the card "
        "to a file, then put away cards that are finished."
    ),
    _(
        "This browser keeps nothing from page to page. What you do is lost when you leave this page. "
        "Save the card to a file first, or use the one-file edition."
    ),
    _("This browser keeps nothing on the device. Save the record before this page is closed."),
    _(
        "This browser keeps nothing on the device: do not reload or close this page before you have "
        "handed in."
    ),
    _(
        "This can be read in two ways. Write it without a mark for thousands: 1000, or 1.0 where you "
        "mean one."
    ),
    _("This device already has that card"),
    _("This file holds no card. Choose the file that was saved with “Put the card away”."),
    _("This is the right one."),
    _("Ticket"),
    _("Time"),
    _("Time is up. This happens: {deed}"),
    _("Time to act"),
    _("Time was up"),
    _("To handing in"),
    _("Too early"),
    _("Try again"),
    _("Type the passphrase first."),
    _("Type the ticket first."),
    _("Undo"),
    _("Undone. Placed: {placed} of {total}."),
    _("What do you do?"),
    _("Whose card?"),
    _("Word {number}, “{word}”, is not one of the words used here. Ask the assessor to say it again."),
    _("Workplace"),
    _("Write a number first."),
    _("Write a number from {least} to {most}."),
    _("Write a whole number."),
    _("Write no more than {places} decimals."),
    _("Write these four groups on the paper sheet. Whoever has the file can compare them later."),
    _("Write your name. It goes on the certificate."),
    _("Yes, begin"),
    _("Yes, go on"),
    _("You have {share}. Needed: {cut}."),
    _("Your answer: not this."),
    _("Your answer: right."),
    _("{alarm} sounds"),
    _("{answered} of {total} answered. What it earned is told when the employer has marked it."),
    _("{answer}: moved here from {item}."),
    _("{control}: one step down"),
    _("{control}: one step up"),
    _("{day}: {result}"),
    _("{done} of {total} answered"),
    _("{done} of {total} sorted"),
    _("{gone} of {minutes} min"),
    _("{hours} h {minutes} min left"),
    _("{label}: about {number}."),
    _("{label}: {number}."),
    _("{marks} of {of}"),
    _("{marks} of {of} marks. The cut is {cut}, which is {percent} %."),
    _("{minutes} min left"),
    _("{missed} missed, {extra} too many"),
    _("{name}, read out"),
    _("{n} more"),
    _("{n} steps to move"),
    _("{n} steps were refused."),
    _("{read} of {total}"),
    _("{right} of {total} pairs right"),
    _("{right} of {total} right, {missed} missed, {needless} condemned needlessly"),
    _("{seconds} seconds left"),
    _("{share} of the mark"),
    _("{step}: number {place} of {total}."),
    _("{step}: taken back."),
    _("{step}: taken out again."),
    _("{total} questions, {minutes} minutes. The time is shown and cuts nothing off."),
    *CHECKING_WORDS,
    *PRACTICAL_WORDS,
)
"""English source texts; ``{name}`` stands for a value and stays as it is."""


def script_words(language: str) -> dict[str, str]:
    """Return the texts that differ from English, English to the language's own."""
    catalogue, _problems = load_catalogue(language)
    said = {words: catalogue.gettext(words) for words in SCRIPT_WORDS}
    return {words: own for words, own in said.items() if own != words}


def words_script(language: str) -> str:
    """Return a classic script that gives the words to the page's scripts."""
    return f"Words.set({script_json(script_words(language))});\n"
