"""Signing and checking: keys, trust, certificates, and the codes and files that carry them."""
