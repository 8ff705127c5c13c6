// Packages of the tests that bring no types of their own.
declare module '@digitalbazaar/data-integrity';
declare module '@digitalbazaar/ed25519-multikey';
declare module '@digitalbazaar/eddsa-jcs-2022-cryptosuite';
declare module '@digitalbazaar/vc';
declare module 'jsonld-signatures';
