/**
 * What every certificate's code has in common, never to be changed: the same bytes as builder/proof/dictionary-1.txt, held together by
 * a test. Deflate (RFC 1951) refers to it instead of writing it out.
 */
const Dictionary1 = (() => {
  'use strict';

  const TEXT = 'known to the assessor\nknown to the trainer\npassport\nidentity card\ndriving licence\nstaff card with photograph\ncompany card with photograph\nworks pass with photograph\n\nfr\nde\n1.0\ntrue\nself-recorded\nobserved\n2\n90\n10000\n5\n10000\n2031-2030-2029-2028-\n\nen\n0.1\nfalse\nsupervised\nnot observed\n1\n75\n20000\n6\n100\n30000\n\nen\n1.0\nfalse\nself-recorded\nnot observed\n1\n80\n20000\n6\n20000\n2027-0\n\n\n2026-0T00:00:00Z\n2027-0\nen\n1.0\nfalse\nsupervised\nobserved\n1\n80\n24000\n8\n24000\n2026-0';

  /** @returns {Uint8Array} */
  function bytes() {
    return Sha256.utf8(TEXT);
  }

  return Object.freeze({ bytes });
})();
