import encodeQR from 'qr';

/** The modules of a QR code, row by row, true for dark, without a quiet zone; `ecc` low, medium, quartile or high. */
export const encode = (text, { ecc = 'medium', encoding } = {}) =>
  // The package draws a border of at least one module, which is taken off again.
  encodeQR(text, 'raw', { ecc, encoding, border: 1 }).slice(1, -1).map((row) => row.slice(1, -1));
