"""Keys, passphrases, signatures, the list of trusted keys, and the codes that carry records."""
