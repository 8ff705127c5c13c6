"""Supervised checks from seal to certificate: tickets, what came back, who vouched for it."""
