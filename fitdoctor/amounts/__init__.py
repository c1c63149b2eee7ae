"""Amounts: measured lengths in, marks on the cloth out."""
