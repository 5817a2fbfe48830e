"""Refusals of the ground floor, each a sentence for the reader."""


class Refused(Exception):
    """A change that may not be made; the message says why."""


class InvitationRefused(Refused):
    """An invitation that cannot be made or accepted."""
