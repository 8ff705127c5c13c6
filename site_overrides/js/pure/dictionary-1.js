/**
 * What every certificate's code has in common, never to be changed: the same bytes as builder/proof/dictionary-1.txt, held together by
 * a test. Deflate (RFC 1951) refers to it instead of writing it out.
 */
const Dictionary1 = (() => {
  'use strict';

  const TEXT = 'observed","of":,"person":"","practical":"not observed","profile":"","retrainBy":"2026-2027-2028-2029-","title":"","trained":"202","trainer":"","version":"","workplace":""},"id":"urn:uuid:{"@context":["https://www.w3.org/ns/credentials/v2","https://www.w3.org/ns/credentials/undefined-terms/v2"],"credentialSubject":{"assessor":"","attempt":1,"check":"self-recorded","check":"supervised","course":"","cut":80,"digest":"","employer":"","equipment":"","example":false,"example":true,"fingerprint":"","format":"journeybook certificate 1","identity":"","language":"en","marks":20,"mustPass":[6,6],"name":"","observation":"","observed":"202","of":20,"person":"","practical":"observed","practical":"not observed","profile":"","retrainBy":"2027-","title":"","trained":"","trainer":"","version":"1.0","workplace":""},"id":"urn:uuid:","issuer":"did:key:z6Mk","proof":{"@context":["https://www.w3.org/ns/credentials/v2","https://www.w3.org/ns/credentials/undefined-terms/v2"],"cryptosuite":"eddsa-jcs-2022","proofPurpose":"assertionMethod","proofValue":"z","type":"DataIntegrityProof","verificationMethod":"did:key:z6Mk#z6Mk"},"type":["VerifiableCredential"],"validFrom":"2026-T00:00:00Z","validUntil":"2027-T23:59:59Z"}';

  /** @returns {Uint8Array} */
  function bytes() {
    return Sha256.utf8(TEXT);
  }

  return Object.freeze({ bytes });
})();
