"""Refusals of the ground floor, each a sentence for the reader."""


class Refused(Exception):
    """A change that may not be made; the message says why."""


class InvitationRefused(Refused):
    """An invitation that cannot be made or accepted."""


class PersonRefused(Refused):
    """A change of a person that cannot be made."""


class RoleRefused(Refused):
    """A role that cannot be given, changed or ended."""


class CohortRefused(Refused):
    """A cohort that cannot be kept."""
