"""Pictures that may be shown: each is a panel under a light, hung once, for everybody or for one person."""

from typing import ClassVar

from django.db import models
from django.utils.translation import gettext_lazy as _

from courses.models.people import Person


class Purpose(models.TextChoices):
    """What a picture hangs for."""

    LESSON = "lesson", _("lesson")
    LOOKALIKE = "lookalike", _("look-alikes")
    PAPER = "paper", _("attempt")
    TRIED = "tried", _("tried plan")


class HungPicture(models.Model):
    """A panel under one light with its lamp places. Its code tells nothing: it is hashed with the site's secret.

    A picture of an attempt has an owner. `measured` maps a frame's number to the contrast of each defect in that very
    frame, as it was when it was first rendered.
    """

    code = models.SlugField(max_length=32, unique=True)
    scene = models.JSONField()
    light = models.CharField(max_length=8)
    lamps = models.JSONField()
    renderer = models.PositiveSmallIntegerField()
    purpose = models.CharField(max_length=9, choices=Purpose)
    owner = models.ForeignKey(Person, on_delete=models.CASCADE, null=True, blank=True, related_name="pictures")
    measured = models.JSONField(default=dict)
    hung_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        ordering: ClassVar = ["pk"]
        constraints = [
            models.CheckConstraint(
                condition=models.Q(purpose=Purpose.PAPER) ^ models.Q(owner=None),
                name="a_picture_of_an_attempt_has_an_owner_and_no_other_has",
            )
        ]

    def __str__(self) -> str:
        return self.code

    def is_for(self, person: Person) -> bool:
        """Say whether `person` may look at it: it is for everybody, or theirs, or they teach, examine or manage."""
        return self.owner_id in (None, person.pk) or person.memberships.staff().exists()
