"""The catalogue: courses, their modules and the lessons in them."""

from typing import ClassVar

from django.db import models

from courses.models.people import Person


class CourseQuerySet(models.QuerySet["Course"]):
    """Sentences about courses."""

    def open_to(self, person: Person) -> "CourseQuerySet":
        """Return the courses of this person's cohorts; whoever teaches or manages sees all."""
        if person.memberships.staff().exists():
            return self.all()
        return self.filter(cohorts__memberships__person=person).distinct()


class Course(models.Model):
    """An order of modules for one way of learning."""

    code = models.SlugField(unique=True)
    title = models.CharField(max_length=120)
    about = models.TextField(blank=True)
    path = models.JSONField(default=list)
    digest = models.CharField(max_length=64)

    objects = CourseQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["code"]

    def __str__(self) -> str:
        return self.title


class LessonQuerySet(models.QuerySet["Lesson"]):
    """Sentences about lessons."""

    def taught(self) -> "LessonQuerySet":
        """Return the lessons whose text stands here."""
        return self.filter(version__gt=0)

    def open_to(self, person: Person) -> "LessonQuerySet":
        """Return the taught lessons in a course of this person."""
        return self.taught().filter(modules__course__in=Course.objects.open_to(person)).distinct()


class Lesson(models.Model):
    """One lesson. Without text it is a title that is not yet taught here."""

    code = models.CharField(max_length=8, unique=True)
    slug = models.SlugField(unique=True)
    title = models.CharField(max_length=120)
    minutes = models.PositiveSmallIntegerField()
    elements = models.JSONField(default=list)
    version = models.PositiveIntegerField(default=0)
    text = models.TextField(blank=True)
    digest = models.CharField(max_length=64, blank=True)

    objects = LessonQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["code"]

    def __str__(self) -> str:
        return f"{self.code} {self.title}"

    @property
    def taught(self) -> bool:
        """Say whether its text stands here."""
        return self.version > 0


class Module(models.Model):
    """A part of a course that belongs together."""

    course = models.ForeignKey(Course, on_delete=models.CASCADE, related_name="modules")
    place = models.PositiveSmallIntegerField()
    title = models.CharField(max_length=120)
    unit = models.CharField(max_length=3, blank=True)
    lessons = models.ManyToManyField(Lesson, through="Placement", related_name="modules")

    class Meta:
        ordering: ClassVar = ["course", "place"]
        constraints = [models.UniqueConstraint(fields=["course", "place"], name="one_module_at_a_place")]

    def __str__(self) -> str:
        return self.title


class Placement(models.Model):
    """Where a lesson stands in a module."""

    module = models.ForeignKey(Module, on_delete=models.CASCADE, related_name="placements")
    lesson = models.ForeignKey(Lesson, on_delete=models.CASCADE, related_name="placements")
    place = models.PositiveSmallIntegerField()

    class Meta:
        ordering: ClassVar = ["module__place", "place"]
        constraints = [models.UniqueConstraint(fields=["module", "place"], name="one_lesson_at_a_place")]

    def __str__(self) -> str:
        return f"{self.module_id}.{self.place}"


class LessonRead(models.Model):
    """That a person has read a version of a lesson."""

    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="lessons_read")
    lesson = models.ForeignKey(Lesson, on_delete=models.CASCADE, related_name="reads")
    version = models.PositiveIntegerField()
    read_at = models.DateTimeField()

    class Meta:
        constraints = [models.UniqueConstraint(fields=["person", "lesson"], name="a_lesson_is_read_once")]

    def __str__(self) -> str:
        return f"{self.person_id} {self.lesson_id}"
