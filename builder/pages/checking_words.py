"""The words of the page on which a certificate is checked, in the reader's language; a part of ``script_words``."""

from __future__ import annotations

from journeybook.pages.words_catalogue import to_translate as _

CHECKING_WORDS = (
    _("A named assessor saw all of the practical done."),
    _("A named person confirmed who answered."),
    _("Altered"),
    _("Attempt"),
    _("Certificate"),
    _("Check taken"),
    _("Contents"),
    _("Course"),
    _("Employer"),
    _("Equipment"),
    _("Example only"),
    _("Example only: made to try things out. It is worth nothing at work."),
    _("Fingerprint"),
    _("Genuine record"),
    _("Genuine, but signer unknown"),
    _("Holds"),
    _("Identity"),
    _(
        "It was made to try things out, or its key is published, so that anybody can sign with it. It is "
        "worth nothing at work. Do not let the work start on it: ask for the real certificate."
    ),
    _("known up to {day}, {age} days ago"),
    _("Language"),
    _("List no. {number} of {holder}. Signers and withdrawals known up to {day}, {age} days ago."),
    _("list of {day}"),
    _("Marks"),
    _("No assessor vouches that this person can do the work."),
    _("No certificate found"),
    _("Nobody confirmed who answered."),
    _("Nobody known stands behind what follows; it is only what the record says of itself."),
    _("None: the trust list in this page is not as it was signed. Ask the employer for a new checking page."),
    _(
        "None: this site was built without a trust list. It can tell whether a record was altered, but "
        "not who signed it."
    ),
    _("Not observed"),
    _(
        "Not taken: it is not signed by the signer of the list in use. Ask the employer for a new "
        "checking page."
    ),
    _("Not taken: the list is not what was signed. Ask the employer for it again."),
    _("Not taken: this is not a trust list. Ask the employer for the file trust.json."),
    _("Not taken: this list is not newer than the one in use."),
    _("Not taken: this page knows no signer who could vouch for it."),
    _("Observations"),
    _("Observed"),
    _("Out of date"),
    _("Practical seen"),
    _("Rules of"),
    _("Self-recorded"),
    _("Signed by"),
    _("Staff number"),
    _("Supervised"),
    _(
        "The clock here is behind the day of the trust list: set it, for nothing that is said of days "
        "can be relied on."
    ),
    _("The newer list is in use until this page is closed."),
    _(
        "The record is genuine, but today is outside its dates. Do not let the work start on it. Training "
        "has to be renewed. For a day in the past, read between which days it held."
    ),
    _(
        "The record is not what was signed. Do not rely on anything in it. Keep the file, and tell the "
        "employer named on the paper."
    ),
    _(
        "The record is unchanged and its signer is on the trust list. Now compare the name with an identity "
        "card, and read the two lines above. Where the paper says something else than this, the paper is false. It is "
        "a record of training, not permission to work."
    ),
    _(
        "The record is unchanged since it was signed, but it is not known here who signed it: anybody can "
        "sign something. Do not rely on it. Ask the employer for their checking page or a newer trust "
        "list."
    ),
    _("The signer has taken this record back. Do not let the work start on it. Ask the employer why."),
    _("The trust list is old: what was withdrawn since is not known here. Ask the employer for a newer one."),
    _(
        "There is no certificate in this that can be read here. Try the PDF itself, not a photo or scan "
        "of it, or the whole code. This says nothing about whether the paper is genuine."
    ),
    _("Trained"),
    _("Trainer"),
    _("unknown here"),
    _("Withdrawals"),
    _("Withdrawn"),
    _("Withdrawn on"),
    _("{marks} of {of}, {cut} % needed, must-pass {right} of {facts}"),
)
"""Only what no other script says as well."""
