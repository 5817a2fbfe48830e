"""People: who signs in, and how they like to read."""

import uuid
from typing import Any

from django.contrib.auth.models import AbstractBaseUser, BaseUserManager
from django.db import models
from django.db.models.functions import Lower
from django.utils.translation import gettext_lazy as _

from courses.trade.units import Preferences


class PersonQuerySet(models.QuerySet["Person"]):
    """Sentences about people."""

    def with_email(self, email: str) -> "PersonQuerySet":
        """Return the person of this address, whatever its capitals."""
        return self.filter(email=email.strip().lower())


class PersonManager(BaseUserManager.from_queryset(PersonQuerySet)):  # type: ignore[misc]
    """Makes people; the framework asks for these names."""

    def create_user(self, email: str, password: str | None = None, **fields: Any) -> "Person":
        """Return a new person who signs in with `email`."""
        person: Person = self.model(email=email.strip().lower(), **fields)
        person.set_password(password)
        person.save(using=self._db)
        return person

    def get_by_natural_key(self, email: str | None) -> "Person":
        """Return the person who signs in with `email`."""
        return self.get(email=(email or "").strip().lower())  # type: ignore[no-any-return]


class Person(AbstractBaseUser):
    """Somebody who signs in. What they may do is said by their memberships."""

    class Theme(models.TextChoices):
        """How the screen is lit."""

        AUTO = "auto", _("As device")
        LIGHT = "light", _("Light")
        DARK = "dark", _("Dark")
        SUNLIGHT = "sunlight", _("Sunlight")

    class Temperature(models.TextChoices):
        """Thermometer of choice."""

        FAHRENHEIT = "degf", "°F"
        CELSIUS = "degc", "°C"

    class Film(models.TextChoices):
        """Film gauge of choice."""

        MIL = "mil", _("mil")
        MICROMETRE = "um", "µm"

    class Volume(models.TextChoices):
        """Measuring cup of choice."""

        OUNCE = "fl_oz", _("fl oz and gal")
        MILLILITRE = "ml", _("mL and L")

    class Length(models.TextChoices):
        """Tape of choice."""

        FOOT = "ft", _("ft and ft²")
        METRE = "m", _("m and m²")

    handle = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    email = models.EmailField(unique=True)
    name = models.CharField(max_length=120)
    is_active = models.BooleanField(default=True)
    joined_at = models.DateTimeField(auto_now_add=True)
    extra_time_percent = models.PositiveSmallIntegerField(default=0)
    language = models.CharField(max_length=8, default="en-us")
    zone = models.CharField(max_length=60, blank=True)
    theme = models.CharField(max_length=8, choices=Theme, default=Theme.AUTO)
    temperature = models.CharField(max_length=4, choices=Temperature, default=Temperature.FAHRENHEIT)
    film = models.CharField(max_length=3, choices=Film, default=Film.MIL)
    volume = models.CharField(max_length=5, choices=Volume, default=Volume.OUNCE)
    length = models.CharField(max_length=2, choices=Length, default=Length.FOOT)

    objects = PersonManager()

    USERNAME_FIELD = "email"
    EMAIL_FIELD = "email"
    REQUIRED_FIELDS = ["name"]

    class Meta:
        verbose_name_plural = "people"
        constraints = [
            models.CheckConstraint(condition=models.Q(email=Lower("email")), name="email_is_kept_in_small_letters"),
            models.CheckConstraint(condition=models.Q(extra_time_percent__lte=300), name="extra_time_is_at_most_300"),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def preferences(self) -> Preferences:
        """Return the units this person reads and types."""
        return Preferences(temperature=self.temperature, film=self.film, volume=self.volume, length=self.length)
