"""The log: what happened to the record, entry by entry, and the signed heads that show when one was altered."""

from typing import ClassVar

from django.db import models

from courses.models import Person


class LogEntry(models.Model):
    """One thing that happened. `body` repeats every other column, and `leaf_hash` is taken over it."""

    seq = models.BigIntegerField(primary_key=True)
    stream = models.CharField(max_length=36)
    stream_seq = models.PositiveIntegerField()
    kind = models.CharField(max_length=24)
    body = models.TextField()
    leaf_hash = models.CharField(max_length=64)
    prev_hash = models.CharField(max_length=64)
    created_at = models.DateTimeField()

    class Meta:
        ordering: ClassVar = ["seq"]
        verbose_name_plural = "log entries"
        constraints = [models.UniqueConstraint(fields=["stream", "stream_seq"], name="a_stream_is_in_order")]

    def __str__(self) -> str:
        return f"{self.seq} {self.kind}"


class TreeHead(models.Model):
    """What all entries up to `size` come to, signed. `peaks` are the roots it was worked out from."""

    size = models.BigIntegerField(primary_key=True)
    root = models.CharField(max_length=64)
    peaks = models.TextField()
    signed_at = models.DateTimeField()
    key_id = models.CharField(max_length=32)
    signature = models.CharField(max_length=128)

    class Meta:
        ordering: ClassVar = ["size"]

    def __str__(self) -> str:
        return f"{self.size} {self.root[:12]}"


class Salt(models.Model):
    """What makes the commitments of a person's entries mean something. Without it they tell nothing."""

    person = models.OneToOneField(Person, on_delete=models.CASCADE, primary_key=True, related_name="salt")
    value = models.CharField(max_length=64)

    def __str__(self) -> str:
        return f"salt of {self.person_id}"
