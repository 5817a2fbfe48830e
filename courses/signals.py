"""What the ground floor tells whoever listens, inside the transaction that makes it true."""

from django.dispatch import Signal

role_changed = Signal()
"""Sent as a membership is given, changed or ended: `membership`, `change` (that word), `by` (Person or None), `now`."""

person_erased = Signal()
"""Sent as a person's name and words are removed for good: `person`, `by` (Person or None), `now`."""
